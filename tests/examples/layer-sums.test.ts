import { expect, test } from 'vitest';
import { formatLength, length, sum } from 'settline/units';

// invented layers under a 3 1/8 in paver, thick base and thin
test.each([
  ['9 in', '13 1/8 in'],
  ['5 1/2 in', '9 5/8 in'],
])('paver, bedding and %s of base add up in sixteenths to %s', (base, total) => {
  const layers = [length('3 1/8 in'), length('1 in'), length(base)] as const;
  expect(formatLength(sum(layers), { as: 'in' })).toBe(total);
});
