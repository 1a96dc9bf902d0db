import { describe, expect, test } from 'vitest';
import { fitPlane } from 'settline/geometry';
import { expectFault } from '../../faults.js';

describe('fitPlane', () => {
  const corners = [
    [0, 0],
    [10, 0],
    [10, 4],
    [0, 4],
  ] as const;

  test('corners of a twisted surface, with residuals', () => {
    const xyz = Float64Array.from(
      corners.flatMap(([x, y], k) => [x, y, 30 - 0.02 * x + (k % 2 === 0 ? 0.01 : -0.01)]),
    );
    const residuals = new Float64Array(4);
    const before = [...xyz];
    const plane = fitPlane(xyz, { residualsInto: residuals });
    expect(plane.gradeX).toBeCloseTo(-0.02, 15);
    expect(plane.gradeY).toBeCloseTo(0, 15);
    expect(plane.slope).toBeCloseTo(0.02, 15);
    expect(plane.rms).toBeCloseTo(0.01, 13);
    expect(plane.centroid[0]).toBeCloseTo(5, 14);
    expect(plane.centroid[2]).toBeCloseTo(29.9, 13);
    [0.01, -0.01, 0.01, -0.01].forEach((residual, k) => {
      expect(residuals[k]).toBeCloseTo(residual, 13);
    });
    expect([...xyz]).toEqual(before);
    expect(Object.isFrozen(plane)).toBe(true);
  });

  test('refuses what is no cloud of points', () => {
    expectFault(() => fitPlane([0, 0, 0] as never), 'WRONG_TYPE');
    expectFault(() => fitPlane(new Float64Array(6)), 'TOO_FEW');
    expectFault(() => fitPlane(new Float64Array(10)), 'WRONG_TYPE');
    expectFault(() => fitPlane(new Float64Array(9)), 'POINTS_COLLINEAR');
    const bad = new Float64Array([0, 0, 0, 1, 0, 0, 0, 1, Number.NaN]);
    expect(expectFault(() => fitPlane(bad), 'NOT_FINITE').path).toEqual([2]);
    bad[8] = Infinity;
    expectFault(() => fitPlane(bad), 'NOT_FINITE');
    bad[8] = 1;
    bad[7] = 1e80;
    expectFault(() => fitPlane(bad), 'OUT_OF_RANGE');
    bad[7] = 1;
    const residualsInto = new Float64Array(2);
    expectFault(() => fitPlane(bad, { residualsInto }), 'WRONG_TYPE');
    expectFault(() => fitPlane(bad, { residuals: residualsInto } as never), 'UNKNOWN_FIELD');
    const row = new Float64Array([0, 0, 0, 1e6, 1e6, 1, 3e6, 3e6, 2]);
    expectFault(() => fitPlane(row), 'POINTS_COLLINEAR');
  });
});
