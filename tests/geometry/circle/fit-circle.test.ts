import { describe, expect, test } from 'vitest';
import { fitCircle } from 'settline/geometry';
import { expectFault } from '../../faults.js';

describe('fitCircle', () => {
  test('the nearest circle, not the one of an equation', () => {
    // scipy least_squares on the distances: centre 0.05333763, 0.04551676, radius 4.95084725
    const { centre, radius, residuals } = fitCircle([
      [0, 5],
      [3, 4],
      [5, 0],
      [4.05, 3],
    ]);
    expect(centre[0]).toBeCloseTo(0.05333763, 8);
    expect(centre[1]).toBeCloseTo(0.04551676, 8);
    expect(radius).toBeCloseTo(4.95084725, 8);
    expect(residuals[3]).toBeCloseTo(0.01929171, 8);
  });

  test('a point in the very centre, and a flat arc far away', () => {
    const ring = [0, 1, 2, 3, 4, 5].map((k) => [Math.cos(k), Math.sin(k)] as const);
    const fit = fitCircle([...ring, [0, 0]]);
    expect([...fit.centre, fit.radius, fit.rms, fit.radiusUncertainty].every(Number.isFinite)).toBe(
      true,
    );
    // chord 10 m, middle ordinate 1 mm: R = 12500.0005 m
    const flat = fitCircle([
      [500_000, 4_500_000],
      [500_005, 4_500_000.001],
      [500_010, 4_500_000],
    ]);
    expect(flat.radius / 12_500.000_5).toBeCloseTo(1, 5);
  });

  test('the uncertainty of the radius, by pencil', () => {
    // 10 mm out and in by turns at four quarters: s = sqrt(4 x 0.01^2 / (4 - 3)), over sqrt(4)
    const fit = fitCircle([
      [5.01, 0],
      [0, 4.99],
      [-5.01, 0],
      [0, -4.99],
    ]);
    expect(fit.radius).toBeCloseTo(5, 12);
    expect(fit.rms).toBeCloseTo(0.01, 12);
    expect(fit.radiusUncertainty).toBeCloseTo(0.01, 12);
  });

  test('writes residuals into an array', () => {
    const into = new Float64Array(4);
    const fit = fitCircle(
      [
        [8, 0],
        [5, 3],
        [2, 0],
        [5, -3.1],
      ],
      { residualsInto: into },
    );
    expect(fit.residuals).toBe(into);
    expect(into.some((one) => one !== 0)).toBe(true);
    expectFault(
      () =>
        fitCircle(
          [
            [8, 0],
            [5, 3],
            [2, 0],
          ],
          { residualsInto: into },
        ),
      'WRONG_TYPE',
    );
  });

  test('many points settle as few do, and inputs are left alone', () => {
    const xy = new Float64Array(2 * 20_000);
    for (let k = 0; k < 20_000; k += 1) {
      const turn = (k / 20_000) * 0.6;
      const radius = 30 + 0.004 * Math.sin(k * 12.9898);
      xy[2 * k] = 500_000 + radius * Math.cos(turn);
      xy[2 * k + 1] = 4_500_000 + radius * Math.sin(turn);
    }
    const before = xy.slice();
    const fit = fitCircle(xy);
    expect(xy).toEqual(before);
    expect(Math.abs(fit.radius - 30)).toBeLessThan(5 * fit.radiusUncertainty);
    // the gradient is nothing: no small change does better
    let [r, x, y] = [0, 0, 0];
    fit.residuals.forEach((d, k) => {
      const [dx, dy] = [(xy[2 * k] ?? 0) - fit.centre[0], (xy[2 * k + 1] ?? 0) - fit.centre[1]];
      r += d;
      x += (d * dx) / Math.hypot(dx, dy);
      y += (d * dy) / Math.hypot(dx, dy);
    });
    for (const one of [r, x, y]) expect(Math.abs(one) / 20_000).toBeLessThan(1e-9);
  });

  test.each([
    [
      [
        [0, 0],
        [1, 1],
      ],
      'TOO_FEW',
    ],
    [
      [
        [0, 0],
        [1, 1],
        [2, 2],
      ],
      'POINTS_COLLINEAR',
    ],
    [
      [
        [3, 3],
        [3, 3],
        [3, 3],
      ],
      'POINTS_COINCIDE',
    ],
    [
      [
        [0, 0],
        [1, 1],
        [2, Number.NaN],
      ],
      'NOT_FINITE',
    ],
    [[[0, 0], [1, 1], [2]], 'WRONG_TYPE'],
  ] as const)('refuses %j: %s', (points, code) => {
    expectFault(() => fitCircle(points as never), code);
  });

  test('refuses an odd array, and points too far apart for floats', () => {
    expectFault(() => fitCircle(new Float64Array(7)), 'WRONG_TYPE');
    const far = (size: number) => fitCircle(Float64Array.of(0, 0, size, 0, 0, size));
    expect(far(1e49).radius / 1e49).toBeCloseTo(Math.SQRT1_2, 12);
    expectFault(() => far(1e51), 'OUT_OF_RANGE');
  });
});
