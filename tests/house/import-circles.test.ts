// No file of the sources imports itself through others.
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { expect, test } from 'vitest';
import { src } from './source-files.js';

const files = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter((name) =>
  name.endsWith('.ts'),
);

/** What each file imports when it runs: types are gone by then. */
const imports = new Map(
  files.map((file) => {
    const text = readFileSync(join(src, file), 'utf8');
    const statements = [...text.matchAll(/^(?:import|export) ([^;]*?) ?from '(\.[^']+)';/gms)];
    const targets = statements
      .filter(([, clause = '']) => !isOfTypes(clause))
      .map(([, , to = '']) => relative(src, join(src, dirname(file), to)).replace(/\.js$/, '.ts'));
    return [file, targets] as const;
  }),
);

/** Whether a clause names types alone: `type { A }` or `{ type A, type B }`. */
function isOfTypes(clause: string): boolean {
  if (clause.startsWith('type ')) return true;
  const names = /^\{(.*)\}$/s.exec(clause)?.[1]?.split(',') ?? [''];
  const named = names.map((name) => name.trim()).filter((name) => name !== '');
  return named.length > 0 && named.every((name) => name.startsWith('type '));
}

/** Circles found on a walk that goes down every import once. */
function findCircles(graph: ReadonlyMap<string, readonly string[]>): string[] {
  const [done, circles] = [new Set<string>(), [] as string[]];
  const walk = (file: string, above: readonly string[]): void => {
    const at = above.indexOf(file);
    if (at >= 0) circles.push([...above.slice(at), file].join(' > '));
    if (at >= 0 || done.has(file)) return;
    for (const target of graph.get(file) ?? []) walk(target, [...above, file]);
    done.add(file);
  };
  for (const file of graph.keys()) walk(file, []);
  return circles;
}

test('the walk finds a circle', () => {
  const graph = new Map([
    ['a', ['b', 'c']],
    ['b', ['c']],
    ['c', ['a']],
  ]);
  expect(findCircles(graph)).toEqual(['a > b > c > a']);
});

test('every import leads to a file', () => {
  const targets = [...imports.values()].flat();
  expect(targets.length).toBeGreaterThan(1000);
  expect(targets.filter((file) => !imports.has(file))).toEqual([]);
});

test('no circles', () => {
  expect(findCircles(imports)).toEqual([]);
});
