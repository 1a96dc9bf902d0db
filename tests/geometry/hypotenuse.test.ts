import fc from 'fast-check';
import { expect, test } from 'vitest';
import { hypotenuse } from '../../src/geometry/floats.js';
import { runs } from '../runs.js';

test.each([
  [3, -4, 5],
  [0, 0, 0],
  [-0, -2, 2],
  [3e200, 0, 3e200],
  [1e-300, 1e-300, Math.SQRT2 * 1e-300],
])('over %d and %d: %d', (x, y, length) => {
  expect(hypotenuse(x, y)).toBe(length);
});

test('digit for digit what the engine gives', () => {
  const side = fc.double({ noNaN: true, min: -1e150, max: 1e150 });
  const property = fc.property(side, side, (x, y) => {
    expect(hypotenuse(x, y)).toBe(Math.hypot(x, y));
  });
  fc.assert(property, runs(300));
});
