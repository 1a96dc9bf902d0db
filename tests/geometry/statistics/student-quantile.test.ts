import { describe, expect, test } from 'vitest';
import { outlierCritical, studentQuantile } from 'settline/geometry';
import { expectFault } from '../../faults.js';

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
