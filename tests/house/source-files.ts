import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';

/** The folder of the sources. */
export const src = join(import.meta.dirname, '..', '..', 'src');

/** The index of every folder that is a subpath, from `src`. */
export const indexFiles: readonly string[] = readdirSync(src, { withFileTypes: true })
  .filter((entry) => entry.isDirectory() && existsSync(join(src, entry.name, 'index.ts')))
  .map(({ name }) => join(name, 'index.ts'))
  .sort();
