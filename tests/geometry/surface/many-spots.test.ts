// Surfaces of a hundred thousand spots and more, which are sorted before they are joined.
import { describe, expect, test } from 'vitest';
import { surfaceVolumes } from 'settline/geometry';
import { spreadOrder } from '../../../src/geometry/surface/spread-order.js';
import { expectFault } from '../../faults.js';

const SIDE = 320;
const COUNT = SIDE * SIDE;

/** A grid of spots 1 m apart, 319 m each way, in no order; the height falls along both. */
const spots = Float64Array.from({ length: 3 * COUNT }, (_, k) => {
  const place = (Math.floor(k / 3) * 7919) % COUNT;
  const [x, y] = [place % SIDE, Math.floor(place / SIDE)];
  return [x, y, 4 - x / 128 - y / 256][k % 3] ?? 0;
});

describe('the order of many spots', () => {
  test('each once, and the next one is a neighbour', () => {
    const order = spreadOrder(spots, 3);
    expect(order?.length).toBe(COUNT);
    expect(new Set(order).size).toBe(COUNT);
    // a cell is 319 / 256 m wide; two spots in it or in two that touch along a side
    const farthest = Math.hypot((2 * 319) / 256, 319 / 256);
    let longest = 0;
    for (let k = 1; k < COUNT; k += 1) {
      const [a, b] = [3 * (order?.[k - 1] ?? 0), 3 * (order?.[k] ?? 0)];
      const [dx, dy] = [
        (spots[a] ?? 0) - (spots[b] ?? 0),
        (spots[a + 1] ?? 0) - (spots[b + 1] ?? 0),
      ];
      longest = Math.max(longest, Math.hypot(dx, dy));
    }
    expect(longest).toBeGreaterThan(0);
    expect(longest).toBeLessThanOrEqual(farthest);
  });

  test('fewer than a hundred thousand stay as they are', () => {
    expect(spreadOrder(spots.subarray(0, 3 * 99_999), 3)).toBeUndefined();
    expect(spreadOrder(spots.subarray(0, 3 * 100_000), 3)?.length).toBe(100_000);
  });

  test('spots on one line, along x or y, are sorted all the same', () => {
    for (const axis of [0, 1]) {
      const line = Float64Array.from({ length: 2 * 100_000 }, (_, k) =>
        k % 2 === axis ? Math.floor(k / 2) : 7,
      );
      const order = spreadOrder(line, 2);
      expect(new Set(order).size).toBe(100_000);
    }
  });
});

describe('volumes of many spots', () => {
  test('a plane over a level design: its mean depth times its area', () => {
    const dig = surfaceVolumes({ existing: spots, design: { z0: 0, gradeX: 0, gradeY: 0 } });
    const mean = 4 - 159.5 / 128 - 159.5 / 256;
    expect(dig.area).toBeCloseTo(319 * 319, 6);
    expect(dig.cut).toBeCloseTo(319 * 319 * mean, 5);
    expect(dig.fill).toBe(0);
    expect(dig.deepestCut).toEqual({ depth: 4, x: 0, y: 0 });
  });

  test('two heights at one place are named by the numbers of the spots as they were given', () => {
    const twice = Float64Array.from(spots);
    twice.copyWithin(3 * 70_000, 3 * 123, 3 * 124);
    twice[3 * 70_000 + 2] = 9;
    const fault = expectFault(
      () => surfaceVolumes({ existing: twice, design: { z0: 0, gradeX: 0, gradeY: 0 } }),
      'TWO_HEIGHTS',
    );
    expect(fault.params).toMatchObject({ first: 123, second: 70_000 });
    expect(fault.message).toBe(
      'points 123 and 70000 are at one place and have two heights (the first point is point 0). Remove one of them',
    );
    expect(fault.path).toEqual(['existing', 70_000]);
  });
});
