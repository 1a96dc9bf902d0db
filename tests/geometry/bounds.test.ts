import { expect, test } from 'vitest';
import { boundsOf } from '../../src/geometry/bounds.js';

test('a box round all points of several lists, of two or three floats a point', () => {
  const plan = [Float64Array.of(2, -1, 3, 4), Float64Array.of(-5, 2)];
  expect(boundsOf(plan)).toEqual({ west: -5, south: -1, east: 3, north: 4 });
  const spots = Float64Array.of(2, -1, 99, 3, 4, -99);
  expect(boundsOf([spots], 3)).toEqual({ west: 2, south: -1, east: 3, north: 4 });
});
