// The source file of a function, and the tests that call it.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from './paths.mjs';

const FOLDERS = ['src', 'tests'];
const LEFT_OUT = /^(?:generated|package\/fixtures|bench)\//;

/** Every file of sources and tests, by its path from the root. */
export function readSourceFiles() {
  const files = FOLDERS.flatMap((folder) =>
    readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts') && !LEFT_OUT.test(name))
      .map((name) => `${folder}/${name.replaceAll('\\', '/')}`),
  );
  return new Map(files.sort().map((path) => [path, readFileSync(join(ROOT, path), 'utf8')]));
}

/** Where the site keeps the text of a file, seen from a page that lies so many folders down. */
export const sourceLink = (path, depth) =>
  `[\`${path}\`](${'../'.repeat(depth)}source/${path}.txt)`;

/** Test files that call a function: those of its folder first, five at the most. */
export function testsOf(name, folder, files) {
  const call = new RegExp(`\\b${name}\\b`, 'g');
  const found = [...files]
    .filter(([path]) => path.startsWith('tests/') && path.endsWith('.test.ts'))
    .map(([path, text]) => ({ path, count: text.match(call)?.length ?? 0 }))
    .filter(({ count }) => count > 1);
  const rank = ({ path, count }) =>
    count +
    (path.startsWith(`tests/${folder}/`) ? 1000 : 0) +
    (path.includes('/published/') ? 500 : 0);
  return found
    .sort((a, b) => rank(b) - rank(a))
    .slice(0, 5)
    .map(({ path }) => path);
}
