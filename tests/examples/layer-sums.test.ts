import { expect, test } from 'vitest';
import { formatLength, length, sum } from 'settline/units';

// common practice, no source: what crews lay under a 2 3/8 in paver, thick base and thin
test.each([
  ['10 in', '13 3/8 in'],
  ['6 in', '9 3/8 in'],
])('paver, bedding and %s of base add up in sixteenths to %s', (base, total) => {
  const layers = [length('2 3/8 in'), length('1 in'), length(base)] as const;
  expect(formatLength(sum(layers), { as: 'in' })).toBe(total);
});
