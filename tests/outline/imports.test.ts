import { readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { expect, test } from 'vitest';

const src = join(import.meta.dirname, '..', '..', 'src');

/** Every file and package that a file pulls in, types aside. */
function reached(path: string, seen = new Set<string>()): Set<string> {
  if (seen.has(path)) return seen;
  seen.add(path);
  const text = readFileSync(join(src, path), 'utf8').replace(/import type [^;]+;/g, '');
  for (const [, to = ''] of text.matchAll(/from '([^']+)'/g)) {
    if (!to.startsWith('.')) seen.add(to);
    else reached(relative(src, join(src, dirname(path), to)).replace(/\.js$/, '.ts'), seen);
  }
  return seen;
}

test('only widening pulls in the clipping package', () => {
  const pulls = (name: string) => reached(`${name}.ts`).has('clipper2-ts');
  const names = [
    'outline/outline-area',
    'outline/area-by-offsets',
    'outline/area-by-bearings',
    'geometry/ring/ring-area',
    'geometry/ring/ring-crossing',
  ];
  expect(names.filter(pulls)).toEqual([]);
  expect(['outline/widen-outline', 'geometry/ring/widen-ring'].map(pulls)).toEqual([true, true]);
});
