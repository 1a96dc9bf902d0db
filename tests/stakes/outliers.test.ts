import { describe, expect, test } from 'vitest';
import {
  fitLine,
  leaveOneOut,
  outlierCritical,
  profileOutliers,
  stakeOutliers,
  studentQuantile,
} from 'settline/stakes';
import { expectFault } from '../faults.js';
import { testRefusals } from '../refusals.js';

describe('Student quantiles', () => {
  test.each([
    // closed forms: one degree of freedom is tan(pi (1/2 - tail)), two are an algebraic expression
    [0.25, 1, 1],
    [0.01, 1, 1 / Math.tan(0.01 * Math.PI)],
    [1e-9, 1, 1 / Math.tan(1e-9 * Math.PI)],
    [0.05, 2, (1 - 0.1) * Math.sqrt(2 / (1 - 0.9 ** 2))],
    [1e-6, 2, (1 - 2e-6) / Math.sqrt(2 * 1e-6 * (1 - 1e-6))],
    // the roots of the distribution's closed forms, found with forty digits
    [0.025, 10, 2.228138851986274],
    [0.005, 3, 5.840909309733357],
    [0.0022727272727272726, 8, 3.899874972193512],
  ])('tail %s, %s degrees of freedom', (tail, degreesOfFreedom, value) => {
    const t = studentQuantile({ tail, degreesOfFreedom });
    expect(Math.abs(t / value - 1)).toBeLessThan(1e-14);
    expect(studentQuantile({ tail: 1 - tail, degreesOfFreedom }) / -t).toBeCloseTo(1, 5);
  });

  test('the middle is nothing', () => {
    expect(studentQuantile({ tail: 0.5, degreesOfFreedom: 4 })).toBe(0);
  });

  test.each([
    [0, 5],
    [1, 5],
    [Number.NaN, 5],
    [0.1, 0],
    [0.1, 2.5],
    [0.1, 1e8],
  ])('refused: tail %s, degrees %s', (tail, degreesOfFreedom) => {
    expectFault(() => studentQuantile({ tail, degreesOfFreedom }), 'OUT_OF_RANGE');
  });

  test('critical value: both sides, shared among the stakes', () => {
    expect(outlierCritical({ count: 8, significance: 0.1 })).toBe(
      studentQuantile({ tail: 0.1 / 16, degreesOfFreedom: 5 }),
    );
    expectFault(() => outlierCritical({ count: 3 }), 'TOO_FEW_POINTS');
    expectFault(() => outlierCritical({ count: 8, significance: 0 }), 'OUT_OF_RANGE');
  });
});

const row = (offsets: readonly number[]) =>
  offsets.map((mm, k) => ({
    id: `S${k + 1}`,
    x: { value: 3 * k, unit: 'm' } as const,
    y: { value: mm, unit: 'mm' } as const,
  }));

describe('stakes in plan', () => {
  test('one that stands out is named, with the move onto the line of the others', () => {
    const found = stakeOutliers({ stakes: row([0, 1, -1, 1, 40, -1, 0, 1]) });
    expect(found.outliers).toEqual(['S5']);
    expect(found.worst).toBe('S5');
    expect(found.degreesOfFreedom).toBe(5);
    expect(found.significance).toBe(0.05);
    const off = found.stakes[4];
    // least squares of the others, by a statistics package: 39.849315 mm
    expect(off?.deleted.to('mm').toNumber()).toBeCloseTo(39.849315, 5);
    expect(off?.move).toMatchObject({ id: 'S5', direction: 'right' });
    expect(off?.move.distance.equals(off.deleted)).toBe(true);
    expect(found.note).toContain('One stake');
  });

  test('scatter alone names none', () => {
    const found = stakeOutliers({ stakes: row([0, 3, -4, 2, 5, -3, 1, -2]) });
    expect(found.outliers).toEqual([]);
    expect(found.note).toContain('No stake');
  });

  test('others exactly in line: no scatter to measure by, so any offset stands out', () => {
    const found = stakeOutliers({ stakes: row([0, 0, 7, 0, 0]) });
    expect(found.stakes[2]?.studentized).toBeNull();
    expect(found.stakes[2]?.deleted.to('mm').toString()).toBe('7');
    expect(found.outliers).toEqual(['S3']);
    expect(found.worst).toBe('S3');
    // unless it keeps the tolerance
    expect(stakeOutliers({ stakes: row([0, 0, 7, 0, 0]), tolerance: '7 mm' }).outliers).toEqual([]);
  });

  test('leverages add up to two', () => {
    const { stakes } = stakeOutliers({ stakes: row([0, 3, -4, 2, 5, -3]) });
    expect(stakes.reduce((sum, { leverage }) => sum + leverage, 0)).toBeCloseTo(2, 12);
  });

  test('a row whose others have no direction is refused', () => {
    const square = ['0 m,0 m', '1 m,0 m', '1 m,1 m', '0 m,1 m', '9 m,9 m'];
    const stakes = square.map((xy, k) => {
      const [x = '', y = ''] = xy.split(',');
      return { id: `S${k}`, x, y };
    });
    expect(expectFault(() => stakeOutliers({ stakes }), 'DIRECTION_UNDEFINED').path).toEqual([
      'stakes',
      4,
    ]);
  });

  const stakes = row([0, 1, -1, 1]);
  testRefusals(stakeOutliers, { stakes, tolerance: '1 mm', significance: '0.01' }, [
    ['stakes', stakes.slice(0, 3), 'TOO_FEW_STAKES'],
    ['stakes.1.id', 'S1', 'DUPLICATE_ID'],
    ['stakes.1.x', '3', 'UNIT_MISSING'],
    ['tolerance', '-1 mm', 'NEGATIVE'],
    ['significance', 0, 'NOT_POSITIVE'],
    ['significance', 0.6, 'OUT_OF_RANGE'],
  ]);
});

describe('marks in profile', () => {
  const marks = (levels: readonly number[], step = 3) =>
    levels.map((mm, k) => ({
      id: `S${k + 1}`,
      station: { value: step * k, unit: 'm' } as const,
      elevation: { value: mm, unit: 'mm' } as const,
    }));

  test('a low mark is to go up', () => {
    const found = profileOutliers({ stakes: marks([0, 1, -1, 1, -40, -1, 0, 1]) });
    expect(found.outliers).toEqual(['S5']);
    expect(found.stakes[4]?.move.direction).toBe('up');
  });

  test('the end of four: leverage 0.7, and the line of the other three by pencil', () => {
    const found = profileOutliers({ stakes: marks([0, 0, 0, 30], 1) });
    expect(found.stakes[3]?.leverage).toBeCloseTo(0.7, 15);
    expect(found.stakes[3]?.deleted.to('mm').toString()).toBe('30');
    expect(found.stakes[3]?.studentized).toBeNull();
    // without S1: 0, 0, 30 at 1, 2, 3 make 15 mm a metre through 10 mm at 2, so -20 at 0
    expect(found.stakes[0]?.deleted.to('mm').toString()).toBe('20');
  });

  const stakes = marks([0, 1, -1, 1]);
  testRefusals(profileOutliers, { stakes }, [
    ['stakes', stakes.slice(0, 3), 'TOO_FEW_STAKES'],
    ['stakes.3.station', undefined, 'REQUIRED'],
    ['significance', '60%', 'NOT_A_NUMBER'],
    ['tolerance', '11 m', 'OUT_OF_RANGE'],
  ]);

  test('three at one station: without the fourth there is no grade', () => {
    const post = stakes.map((stake, k) => ({ ...stake, station: k < 3 ? '1 m' : '2 m' }));
    expectFault(() => profileOutliers({ stakes: post }), 'STATIONS_COINCIDE');
  });
});

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

  test('a point a thousand kilometres off costs the others no digits', () => {
    const near = [0.13, -0.2, 0.3, -0.1, 0.22].map((off, k) => [0.7 * k, off] as const);
    const { deleted, studentized } = leaveOneOut([...near, [1e6, 5e5]]);
    const { centroid, direction, rms } = fitLine(near);
    const [dx, dy] = [1e6 - centroid[0], 5e5 - centroid[1]];
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

  test.each([
    [
      [
        [0, 0],
        [1, 1],
        [2, 2],
      ],
      'TOO_FEW_POINTS',
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
