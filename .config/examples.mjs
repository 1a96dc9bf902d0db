// Writes tests/generated anew where a source, a page or the collector changed: node .config/examples.mjs
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const stamp = join(root, 'tests', 'generated', '.collected');

function hashOfInputs() {
  const folders = ['src', 'docs'].flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.(?:ts|md)$/.test(name) && !/^(?:api|\.vitepress)\//.test(name))
      .map((name) => join(folder, name)),
  );
  const hash = createHash('sha256');
  for (const name of ['README.md', '.config/collect-examples.mjs', ...folders.sort()]) {
    hash.update(`${name}\n`).update(readFileSync(join(root, name)));
  }
  return hash.digest('hex');
}

/** Makes sure that the tests of the examples are those of the sources and pages as they are. */
export async function writeExamples() {
  const hash = hashOfInputs();
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === hash) return;
  const { collectExamples } = await import('./collect-examples.mjs');
  console.log(`${collectExamples()} examples collected`);
  writeFileSync(stamp, hash);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await writeExamples();
