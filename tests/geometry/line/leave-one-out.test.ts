import { describe, expect, test } from 'vitest';
import { fitLine, leaveOneOut } from 'settline/geometry';
import { expectFault } from '../../faults.js';

describe('leaveOneOut', () => {
  test('pairs and a flat array alike; the worst is the one that is off', () => {
    const pairs = [0, 1, -1, 50, 0, 1].map((mm, k) => [2 * k, mm / 1000] as const);
    const flat = leaveOneOut(new Float64Array(pairs.flat()));
    const found = leaveOneOut(pairs);
    expect(found.worst).toBe(3);
    expect(flat.deleted).toEqual(found.deleted);
  });

  test('a point that holds the direction alone is fitted anew', () => {
    const found = leaveOneOut([
      [0, 0],
      [0.001, 0.001],
      [0, 0.001],
      [0.0015, 0],
      [1000, 500],
    ]);
    expect(found.deleted.every(Number.isFinite)).toBe(true);
    expect(found.studentized.every(Number.isFinite)).toBe(true);
    expect(found.leverage[4]).toBeCloseTo(1, 5);
  });

  test.each([3e3, 1e6])('a point %i m off costs the others no digits', (far) => {
    const near = [0.13, -0.2, 0.3, -0.1, 0.22].map((off, k) => [0.7 * k, off] as const);
    const { deleted, studentized } = leaveOneOut([...near, [far, far / 2]]);
    const { centroid, direction, rms } = fitLine(near);
    const [dx, dy] = [far - centroid[0], far / 2 - centroid[1]];
    const offset = direction[0] * dy - direction[1] * dx;
    expect(Math.abs((deleted[5] ?? Number.NaN) / offset)).toBeCloseTo(1, 12);
    const station = direction[0] * dx + direction[1] * dy;
    const along = near.reduce((sum, [x, y]) => {
      return sum + (direction[0] * (x - centroid[0]) + direction[1] * (y - centroid[1])) ** 2;
    }, 0);
    const scatter = rms * Math.sqrt(5 / 3);
    const t = offset / (scatter * Math.sqrt(1.2 + (station * station) / along));
    expect(Math.abs((studentized[5] ?? Number.NaN) / t)).toBeCloseTo(1, 10);
  });

  test.each([4, 5, 12])('each of %i agrees with a fit of the others', (count) => {
    const at = (k: number) => [2 * k, 0.7 * k + (((k * 7) % 5) - 2) / 100] as const;
    const points = Array.from({ length: count }, (_, k) => at(k));
    const { deleted } = leaveOneOut(points);
    points.forEach(([x, y], k) => {
      const { centroid, direction } = fitLine(points.filter((_, other) => other !== k));
      const offset = direction[0] * (y - centroid[1]) - direction[1] * (x - centroid[0]);
      expect(deleted[k]).toBeCloseTo(offset, 13);
    });
  });

  test.each([0, 3, 6])('point %i alone off the line is left out, wherever it stands', (lone) => {
    const rise = (k: number) => (k === lone ? 5 : 0);
    const points = [0, 1, 2, 3, 4, 5, 6].map((k) => [k, 0.5 * k + rise(k)] as const);
    const { deleted, worst } = leaveOneOut(points);
    expect(worst).toBe(lone);
    expect(deleted[lone]).toBeCloseTo(5 / Math.sqrt(1.25), 12);
  });

  describe('by pencil: the line of four points is the x axis, their middle 0, S1 20, squares 4', () => {
    const four = [
      [-3, 1],
      [-1, -1],
      [1, -1],
      [3, 1],
    ] as const;

    // s^2 = 4 / (5 - 3) = 2; the standard error is the root of 2 (1 + 1/4 + x^2 / 20)
    test.each([
      [0, 4, 4 / Math.sqrt(2.5)],
      [2, -3, -3 / Math.sqrt(2.9)],
      [-4, 2, 2 / Math.sqrt(4.1)],
    ])('a fifth at %f, %f', (x, y, t) => {
      const { deleted, studentized } = leaveOneOut([four[0], [x, y], ...four.slice(1)]);
      expect(deleted[1]).toBeCloseTo(y, 13);
      expect(studentized[1]).toBeCloseTo(t, 12);
    });

    test('a fifth far behind turns the line round: what is above is right of it', () => {
      const { deleted, studentized } = leaveOneOut([...four, [-1000, 500]]);
      expect(deleted[4]).toBeCloseTo(-500, 10);
      expect(studentized[4]).toBeCloseTo(-500 / Math.sqrt(2 * (1.25 + 50_000)), 11);
    });
  });

  test('points without any scatter: nothing is infinite, and the first is named', () => {
    const row = (lone: number) => [0, 0, lone, 0, 0].map((y, x) => [x, y] as const);
    const none = leaveOneOut(row(0));
    expect([...none.studentized]).toEqual([0, 0, 0, 0, 0]);
    expect(none.worst).toBe(0);
    // the scatter is the last digit of the largest coordinate, 5: 5 / (5 e sqrt(1 + 1/4))
    const { studentized } = leaveOneOut(row(5));
    expect((studentized[2] ?? 0) * Number.EPSILON).toBeCloseTo(1 / Math.sqrt(1.25), 12);
  });

  test.each([
    [
      [
        [0, 0],
        [1, 1],
        [2, 2],
      ],
      'TOO_FEW',
    ],
    [
      [
        [0, 0],
        [0, 0],
        [0, 0],
        [0, 0],
      ],
      'POINTS_COINCIDE',
    ],
    [
      [
        [0, 0],
        [1, 0],
        [1, 1],
        [0, 1],
      ],
      'DIRECTION_UNDEFINED',
    ],
    [
      [
        [0, 0],
        [1, 0],
        [Number.NaN, 1],
        [0, 1],
      ],
      'NOT_FINITE',
    ],
    [
      [
        [0, 0],
        [1, 0],
        [1e200, 1],
        [0, 1],
      ],
      'OUT_OF_RANGE',
    ],
    ['0 0 1 1', 'WRONG_TYPE'],
  ] as const)('refuses %j: %s', (points, code) => {
    expectFault(() => leaveOneOut(points as never), code);
  });
});
