// npm run new: the files of a new calculation. tests/package/deep/new.test.ts lints and runs them.
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';

const script = join(import.meta.dirname, '..', '..', '.config', 'new.mjs');
let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'settline-new-'));
  mkdirSync(join(folder, 'src', 'build-up'), { recursive: true });
  writeFileSync(join(folder, 'src', 'build-up', 'index.ts'), "export { a } from './a.js';\n");
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const run = (...args: readonly string[]) =>
  spawnSync('node', [script, ...args], { cwd: folder, encoding: 'utf8' });
const read = (...path: readonly string[]) => readFileSync(join(folder, ...path), 'utf8');

test('writes the source, the test and the line of the index', () => {
  const { status, stdout } = run('build-up/edge-bench');
  expect(status).toBe(0);
  expect(stdout).toContain('npm run exports');
  expect(read('src', 'build-up', 'index.ts')).toBe(
    "export { a } from './a.js';\nexport { edgeBench, type EdgeBench, type EdgeBenchOptions } from './edge-bench.js';\n",
  );
  const source = read('src', 'build-up', 'edge-bench.ts');
  for (const part of [
    'export interface EdgeBenchOptions {',
    'export interface EdgeBench extends Worked {',
    'export function edgeBench(options: EdgeBenchOptions): EdgeBench {',
    '@returns',
    '@throws',
    '@source',
    '@example',
    '//=>',
    'derivedStep(',
  ]) {
    expect(source).toContain(part);
  }
  expect(read('tests', 'build-up', 'edge-bench.test.ts')).toContain("from 'settline/build-up'");
});

test('writes over nothing', () => {
  run('build-up/edge-bench');
  const index = read('src', 'build-up', 'index.ts');
  const { status, stderr } = run('build-up/edge-bench');
  expect(status).toBe(1);
  expect(stderr).toContain('is there already');
  expect(read('src', 'build-up', 'index.ts')).toBe(index);
});

test.each([
  [''],
  ['edge-bench'],
  ['build-up/EdgeBench'],
  ['build-up/../x'],
  ['nowhere/edge-bench'],
])('refuses "%s"', (where) => {
  const { status, stderr } = run(where);
  expect(status).toBe(1);
  expect(stderr).toMatch(/Name a folder and a file|name a folder of src/);
});
