import { describe, expect, test } from 'vitest';
import { ringArea, ringMeasures } from 'settline/geometry';
import { expectFault } from '../../faults.js';

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

test('coordinates beyond any site overflow no area', () => {
  expectFault(() => ringArea(Float64Array.of(0, 0, 1e200, 0, 0, 1e200)), 'OUT_OF_RANGE');
});
