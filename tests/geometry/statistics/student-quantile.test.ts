import { describe, expect, test } from 'vitest';
import { studentQuantile } from 'settline/geometry';
import { expectFault } from '../../faults.js';
import { testRefusals } from '../../refusals.js';

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
    [1e-101, 5],
    [0.1, 0],
    [0.1, 2.5],
    [0.1, 1e8],
  ])('refused: tail %s, degrees %s', (tail, degreesOfFreedom) => {
    expectFault(() => studentQuantile({ tail, degreesOfFreedom }), 'OUT_OF_RANGE');
  });

  test('the least tail, by its closed form', () => {
    // one degree of freedom: tan(pi (1/2 - tail)), which is 1 / (pi tail) for small ones
    const t = studentQuantile({ tail: 1e-100, degreesOfFreedom: 1 });
    expect(Math.abs(t * Math.PI * 1e-100 - 1)).toBeLessThan(1e-11);
  });

  testRefusals(studentQuantile, { tail: 0.1, degreesOfFreedom: 5 }, [
    ['tail', Number.NaN, 'NOT_FINITE'],
    ['tail', '0.1', 'WRONG_TYPE'],
    ['tail', undefined, 'REQUIRED'],
    ['degreesOfFreedom', '5', 'WRONG_TYPE'],
    ['degreesOffreedom', 5, 'UNKNOWN_FIELD'],
  ]);
});
