import { describe, expect, test } from 'vitest';
import { ringArea, ringCrossing, ringMeasures, widenRing } from 'settline/outline';
import { expectFault } from '../faults.js';

const square = Float64Array.of(0, 0, 4, 0, 4, 4, 0, 4);

describe('ringArea and ringMeasures', () => {
  test('by pencil, either way round', () => {
    expect(ringArea(Float64Array.of(0, 0, 9, 0, 9, 4, 5, 4, 5, 7, 0, 7))).toBe(51);
    expect(ringArea(Float64Array.of(0, 7, 5, 7, 5, 4, 9, 4, 9, 0, 0, 0))).toBe(51);
    const ell = ringMeasures(Float64Array.of(0, 0, 9, 0, 9, 4, 5, 4, 5, 7, 0, 7));
    expect(ell).toEqual({
      area: 51,
      perimeter: 32,
      // (36 x 4.5 + 15 x 2.5) / 51 and (36 x 2 + 15 x 5.5) / 51
      centroid: [199.5 / 51, 154.5 / 51],
      orientation: 'counter-clockwise',
    });
    expect(ringMeasures(Float64Array.of(0, 0, 0, 4, 4, 4, 4, 0)).orientation).toBe('clockwise');
  });

  test('at 500 000 / 4 500 000 nothing is lost', () => {
    const shifted = square.map((value, k) => value + (k % 2 === 0 ? 500_000 : 4_500_000));
    expect(ringArea(shifted)).toBe(16);
    expect(ringMeasures(shifted).centroid).toEqual([500_002, 4_500_002]);
  });

  test('ten million points', () => {
    const count = 1e7;
    const xy = new Float64Array(2 * count);
    for (let i = 0; i < count; i += 1) {
      const turn = (2 * Math.PI * i) / count;
      xy[2 * i] = 500_000 + 100 * Math.cos(turn);
      xy[2 * i + 1] = 4_500_000 + 100 * Math.sin(turn);
    }
    const exact = 0.5 * count * 1e4 * Math.sin((2 * Math.PI) / count);
    // the coordinates themselves are rounded to 1e-9 m
    expect(Math.abs(ringArea(xy) - exact)).toBeLessThan(1e-6);
    const { area, perimeter, centroid } = ringMeasures(xy);
    expect(Math.abs(area - exact)).toBeLessThan(1e-6);
    expect(Math.abs(perimeter - 200 * Math.PI)).toBeLessThan(1e-2);
    expect(Math.abs(centroid[0] - 500_000)).toBeLessThan(1e-6);
    expect(Math.abs(centroid[1] - 4_500_000)).toBeLessThan(1e-6);
  }, 60_000);

  test('points on one line enclose nothing', () => {
    const line = Float64Array.of(0, 0, 1, 1, 2, 2, 3, 3);
    expect(ringArea(line)).toBe(0);
    expectFault(() => ringMeasures(line), 'ZERO_AREA');
  });
});

test.each([ringArea, ringMeasures, ringCrossing, (xy: Float64Array) => widenRing(xy, 1)])(
  'wrong points are refused: %s',
  (run) => {
    expectFault(() => run([0, 0, 1, 0, 1, 1] as never), 'WRONG_TYPE');
    expectFault(() => run(undefined as never), 'WRONG_TYPE');
    expectFault(() => run(Float64Array.of(0, 0, 1, 0, 1, 1, 5)), 'WRONG_TYPE');
    expectFault(() => run(Float64Array.of(0, 0, 1, 0)), 'TOO_FEW_POINTS');
    const issue = expectFault(() => run(Float64Array.of(0, 0, 1, NaN, 1, 1)), 'NOT_FINITE');
    expect(issue.params).toEqual({ point: 1, axis: 'y' });
    expectFault(() => run(Float64Array.of(0, 0, 1, 0, Infinity, 1)), 'NOT_FINITE');
  },
);

test('coordinates beyond any site overflow no area', () => {
  expectFault(() => ringArea(Float64Array.of(0, 0, 1e200, 0, 0, 1e200)), 'OUT_OF_RANGE');
});

describe('ringCrossing', () => {
  test.each([
    ['a bow tie', [0, 0, 2, 2, 2, 0, 0, 2], [[0, 2]]],
    [
      'a corner on an edge',
      [0, 0, 4, 0, 4, 4, 2, 0, 0, 4],
      [
        [0, 2],
        [0, 3],
      ],
    ],
    [
      'an edge that runs back over another',
      [0, 0, 4, 0, 2, 0, 2, 3],
      [
        [0, 1],
        [0, 2],
      ],
    ],
    [
      'all on one line',
      [0, 0, 1, 1, 2, 2, 3, 3],
      [
        [0, 3],
        [1, 3],
        [2, 3],
      ],
    ],
  ])('%s', (_, points, pairs) => {
    const { first, second } = ringCrossing(Float64Array.from(points)) ?? {};
    expect(pairs).toContainEqual([first, second]);
  });

  test('a repeated point and a repeated end are no crossing', () => {
    expect(ringCrossing(Float64Array.of(0, 0, 4, 0, 4, 0, 4, 4, 0, 4, 0, 0))).toBeUndefined();
    expect(ringCrossing(square)).toBeUndefined();
  });

  test('decides what floats cannot: a point one unit in the last place off an edge', () => {
    const edge = (y: number) => Float64Array.of(0, 0, 3, 1, 3, 4, 1.5, y, 0, 4);
    expect(ringCrossing(edge(0.5))?.first).toBe(0);
    expect(ringCrossing(edge(0.5 + 2 ** -53 * 2))).toBeUndefined();
  });

  test('large and awkward: a comb, a spiral, a grid line of points', () => {
    const comb: number[] = [];
    for (let i = 0; i < 50_000; i += 1)
      comb.push(i, i % 2 === 0 ? 10 : 1, i + 0.5, i % 2 === 0 ? 10 : 1);
    comb.push(50_000, 0, 0, 0);
    expect(ringCrossing(Float64Array.from(comb))).toBeUndefined();
    // one tooth reaches through the spine
    comb[2 * 20_001 * 2 + 1] = -1;
    expect(ringCrossing(Float64Array.from(comb))).toBeDefined();
  }, 60_000);
});

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
    const huge = square.map((value) => 1e200 * value);
    expectFault(() => widenRing(huge, 1), 'OUT_OF_RANGE');
    const issue = expectFault(
      () => widenRing(Float64Array.of(0, 0, 2, 2, 2, 0, 0, 2), 1),
      'SELF_INTERSECTION',
    );
    expect(issue.params).toEqual({ first: 0, second: 2 });
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
