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

test.each(['ring-area', 'ring-measures', 'ring-crossing', 'widen-ring'])(
  '%s calculates in floats and pulls in no decimals',
  (name) => {
    const all = [...reached(`outline/${name}.ts`)];
    expect(all).toContain('errors.ts');
    expect(all.filter((path) => path.startsWith('units/') || path === 'decimal.js')).toEqual([]);
  },
);

test('only widening pulls in the clipping package', () => {
  const pulls = (name: string) => reached(`outline/${name}.ts`).has('clipper2-ts');
  const names = [
    'outline-area',
    'area-by-offsets',
    'area-by-bearings',
    'ring-area',
    'ring-crossing',
  ];
  expect(names.filter(pulls)).toEqual([]);
  expect(['widen-outline', 'widen-ring'].map(pulls)).toEqual([true, true]);
});
