// A hash of all that the published checks depend on: the sources, the checks, and how they compare.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from './paths.mjs';

const textsUnder = (folder) =>
  readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .sort()
    .map((name) => join(folder, name));

/** The hash of the checks and sources as they are now. */
export function hashOfChecks() {
  const hash = createHash('sha256');
  for (const name of [...textsUnder('src'), ...textsUnder('tests/published'), 'tests/printed.ts']) {
    hash.update(`${name}\n`).update(readFileSync(join(ROOT, name)));
  }
  return hash.digest('hex');
}
