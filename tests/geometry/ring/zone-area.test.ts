import { describe, expect, test } from 'vitest';
import { stripsAlong, zoneArea } from '../../../src/geometry/ring/zone-area.js';

/** A square of 10 m. */
const DIG = [0, 0, 10, 0, 10, 10, 0, 10];
/** The same with two arms of 2 m above y = 2. */
const ARMS = [0, 0, 10, 0, 10, 10, 8, 10, 8, 2, 2, 2, 2, 10, 0, 10];

const across = stripsAlong([-5, 5, 15, 5], 1);
const upward = stripsAlong([5, -5, 5, 15], 1);
/** All that is within 1 m of the diagonal, along x. */
const diagonal = stripsAlong([-5, -5, 15, 15], Math.SQRT1_2);

describe('the zone of a line', () => {
  test.each([
    ['right across', across, 20],
    ['upward', upward, 20],
    ['along the diagonal', diagonal, 100 - 81],
    ['past both ends by the reach', stripsAlong([3, 5, 7, 5], 1), 6 * 2],
    ['past both ends by the reach, upward', stripsAlong([5, 7, 5, 3], 1), 6 * 2],
    // 6 x 2 and 2 x 6, with 2 x 2 in common
    ['round a bend', stripsAlong([-5, 5, 5, 5, 5, 15], 1), 20],
    ['along an edge', stripsAlong([-5, 0, 15, 0], 1), 10],
    ['outside', stripsAlong([-5, 12, 15, 12], 1), 0],
    ['of a point alone', stripsAlong([5, 5], 1), 0],
  ])('%s', (_, strips, area) => {
    expect(zoneArea([DIG], strips, [])).toBeCloseTo(area, 12);
    const turned = [0, 10, 10, 10, 10, 0, 0, 0];
    expect(zoneArea([turned], strips, [])).toBeCloseTo(area, 12);
  });

  test.each([
    ['crossing it', upward, 20 - 4],
    ['crossing it along the diagonal', diagonal, 20 - 4],
    ['half over it', stripsAlong([-5, 6, 15, 6], 1), 10],
    ['over all of it', stripsAlong([-5, 5, 15, 5], 2), 0],
    ['apart from it', stripsAlong([-5, 8.5, 15, 8.5], 1), 20],
    ['outside the dig', stripsAlong([-5, 20, 15, 20], 1), 20],
    ['two of them', [...upward, ...stripsAlong([2, -5, 2, 15], 1)], 20 - 8],
  ])('without what is counted: a zone %s', (_, counted, area) => {
    expect(zoneArea([DIG], across, counted)).toBeCloseTo(area, 12);
  });

  test('in the arms of a dig', () => {
    expect(zoneArea([ARMS], across, [])).toBeCloseTo(2 * 4, 12);
    expect(zoneArea([ARMS], across, stripsAlong([1, -5, 1, 15], 1))).toBeCloseTo(4, 12);
  });

  test('not in the holes of a dig', () => {
    const holes = [
      [4, 4, 6, 4, 6, 6, 4, 6],
      [1, 5.5, 1, 7, 2, 7, 2, 5.5],
    ];
    expect(zoneArea([DIG, ...holes], across, [])).toBeCloseTo(20 - 4 - 0.5, 12);
  });

  test('no dig, no zone', () => {
    expect(zoneArea([], across, [])).toBe(0);
  });
});
