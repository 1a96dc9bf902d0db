import { readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { docExamples, filesUnder, pageExamples } from '../../.config/collect-examples.mjs';
import { runCode } from '../../docs/.vitepress/live/example/run-code.js';

const root = fileURLToPath(new URL('../..', import.meta.url));
const site = readFileSync(join(root, 'examples/cedar-court.json'), 'utf8');

interface Example {
  readonly title: string;
  readonly code: string;
}

type Read = (
  path: string,
) => readonly { readonly name: string; readonly code?: string | undefined }[];

const files: (folder: string, ending: string) => readonly string[] = filesUnder;

function examplesIn(paths: readonly string[], read: Read): Example[] {
  return paths.flatMap((path) =>
    read(path).map(({ name, code }) => ({
      title: `${relative(root, path)}: ${name}`,
      code: code ?? '',
    })),
  );
}

const examples = [
  // threads are for Node: their page shows the example as it is
  ...examplesIn(
    files(join(root, 'src'), '.ts').filter((path) => !path.includes('node-threads')),
    docExamples,
  ),
  ...examplesIn([join(root, 'README.md'), ...files(join(root, 'docs'), '.md')], pageExamples),
];

test('every example of the doc comments and pages gives in the page what is written', async () => {
  expect(examples.length).toBeGreaterThan(300);
  const wrong: string[] = [];
  let lines = 0;
  for (const { title, code } of examples) {
    const result = await runCode(code, site);
    const written = code.match(/\/\/=>/g)?.length ?? 0;
    lines += written;
    if (result.lines.length !== written)
      wrong.push(`${title}: ${result.lines.length} of ${written} lines`);
    for (const { message } of result.faults) wrong.push(`${title}: ${message}`);
    for (const { line, isEqual, shown } of result.lines) {
      if (!isEqual) wrong.push(`${title}: line ${line} gives ${shown}`);
      if (!(code.split('\n')[line - 1] ?? '').includes('//=>'))
        wrong.push(`${title}: line ${line}?`);
    }
  }
  expect(wrong).toEqual([]);
  expect(lines).toBeGreaterThan(700);
});

test('a line that gives something else is told, with what it gives now', async () => {
  const { lines, faults } = await runCode(`[1, 'two'] //=> [1, 'three']`, site);
  expect(faults).toEqual([]);
  expect(lines).toEqual([
    { line: 1, isEqual: false, shown: `[1, 'two']`, written: `[1, 'three']` },
  ]);
});

test('a fault is told in the words of the library, with code, path and line', async () => {
  const code = `const thickness = '8';\nlifts({ thickness, maxLift: '3 in', compactedPerLoose: 0.8 }) //=> 1`;
  const { lines, faults } = await runCode(code, site);
  expect(lines).toEqual([]);
  expect(faults).toHaveLength(1);
  expect(faults[0]).toMatchObject({ line: 2, code: 'UNIT_MISSING', path: 'thickness' });
  expect(faults[0]?.message).toContain('has no unit');
});

test('what is not code, and what would load other code, is refused with its line', async () => {
  const broken = await runCode('1 + 1;\nconst = 3;', site);
  expect(broken.faults[0]).toMatchObject({ line: 2, code: null });
  const loading = await runCode("await import('https://example.com/x.js')", site);
  expect(loading.faults[0]?.message).toContain('loads nothing');
  const other = await runCode("import { x } from 'other'", site);
  expect(other.faults[0]?.message).toContain('only settline');
});
