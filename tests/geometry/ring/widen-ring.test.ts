import { describe, expect, test } from 'vitest';
import { ringArea, widenRing } from 'settline/geometry';
import { expectFault } from '../../faults.js';

const square = Float64Array.of(0, 0, 4, 0, 4, 4, 0, 4);

describe('widenRing', () => {
  test('by pencil', () => {
    const { rings, area, closesUp } = widenRing(Float64Array.of(0, 4, 3, 0, 0, 0), 1);
    expect(area).toBeCloseTo(24, 12);
    expect(closesUp).toBe(false);
    expect(rings).toHaveLength(1);
    expect(ringArea(rings[0] ?? square)).toBeCloseTo(24, 12);
  });

  test('a slot closes, a pocket behind a narrow mouth stays as a hole', () => {
    const slot = [0, 0, 10, 0, 10, 10, 6, 10, 6, 5, 5, 5, 5, 10, 0, 10];
    const { area, closesUp, rings } = widenRing(Float64Array.from(slot), 2);
    expect(area).toBeCloseTo(14 * 14, 12);
    expect([closesUp, rings.length]).toEqual([true, 1]);
    const pocket = widenRing(Float64Array.from(POCKET.flat()), 0.6);
    // outside 21.2 x 11.2; inside 16 x 7 less 0.6 all round
    expect(pocket.area).toBeCloseTo(21.2 * 11.2 - 14.8 * 5.8, 10);
    expect(pocket.rings).toHaveLength(2);
  });

  test('a needle of a notch that points at another arm takes nothing away there', () => {
    const { area, rings } = widenRing(Float64Array.from(NEEDLE_NOTCH.flat()), 1);
    expect(area).toBeCloseTo(290, 10);
    expect(rings).toHaveLength(1);
  });

  test('refuses what cannot be widened', () => {
    expectFault(() => widenRing(square, -1), 'NEGATIVE');
    expectFault(() => widenRing(square, NaN), 'NOT_FINITE');
    for (const by of ['1', null, {}, Symbol('far')]) {
      expectFault(() => widenRing(square, by as never), 'WRONG_TYPE');
    }
    expectFault(() => widenRing(square, 1e101), 'OUT_OF_RANGE');
    expectFault(() => widenRing(square, 1e-101), 'OUT_OF_RANGE');
    // a needle whose mitre would reach 1e102 m
    const needle = Float64Array.of(0, 0, 1, 0, 0, 1e-90);
    expectFault(() => widenRing(needle, 1e12), 'OUT_OF_RANGE');
    const huge = square.map((value) => 1e200 * value);
    expectFault(() => widenRing(huge, 1), 'OUT_OF_RANGE');
    const issue = expectFault(
      () => widenRing(Float64Array.of(0, 0, 2, 2, 2, 0, 0, 2), 1),
      'SELF_INTERSECTION',
    );
    expect(issue.params).toEqual({ first: 0, second: 2 });
    expect(issue.message).toBe(
      'edge 0 and edge 2 cross or touch. Edge 0 runs from the first point to the second',
    );
    expectFault(() => widenRing(Float64Array.of(1, 1, 1, 1, 1, 1), 1), 'ZERO_AREA');
  });

  test('leaves its input alone', () => {
    const copy = square.slice();
    widenRing(square, 1);
    expect(square).toEqual(copy);
  });
});

/** Two prongs that point at each other before a pocket. */
const POCKET: readonly (readonly [number, number])[] = [
  [0, 0],
  [20, 0],
  [20, 10],
  [10.5, 10],
  [10.5, 9],
  [18, 9],
  [18, 2],
  [2, 2],
  [2, 9],
  [9.5, 9],
  [9.5, 10],
  [0, 10],
];

/** A U whose left arm has a notch of five degrees that opens toward the right arm. */
const NEEDLE_NOTCH: readonly (readonly [number, number])[] = [
  [0, -3],
  [20, -3],
  [20, 10],
  [16, 10],
  [16, 0],
  [10, 0],
  [10, 4.956],
  [9, 5],
  [10, 5.044],
  [10, 10],
  [0, 10],
];
