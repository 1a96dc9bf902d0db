import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';

/** The folder of the sources. */
export const src = join(import.meta.dirname, '..', '..', 'src');

/** The index of every folder that is a subpath, from `src`. */
export const indexFiles: readonly string[] = readdirSync(src, { withFileTypes: true })
  .filter((entry) => entry.isDirectory() && existsSync(join(src, entry.name, 'index.ts')))
  .map(({ name }) => join(name, 'index.ts'))
  .sort();

/** The files of a folder, at any depth, whose names end so. */
export const filesUnder = (folder: string, ending: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith(ending))
    .map((name) => join(folder, name))
    .sort();
