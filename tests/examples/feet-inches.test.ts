// Invented worked examples: figures of our own, worked out by hand. No publication stands behind them.
import { expect, test } from 'vitest';
import { formatLength, length } from 'settline/units';

test('the stack of a drive is 12 1/4 in, and 9 1/4 in of soil lies under 3 in of old asphalt', () => {
  const stack = ['3 1/4 in', '1 in', '8 in'].map((text) => length(text));
  const total = stack.reduce((sum, one) => sum.plus(one));
  expect(formatLength(total, { as: 'in' })).toBe('12 1/4 in');
  expect(formatLength(total.minus(length('3 in')), { as: 'in' })).toBe('9 1/4 in');
});
