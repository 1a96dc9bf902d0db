import { describe, expect, test } from 'vitest';
import { outlierCritical, studentQuantile } from 'settline/geometry';
import { testRefusals } from '../../refusals.js';

describe('outlierCritical', () => {
  test('both sides, shared among the stakes', () => {
    expect(outlierCritical({ count: 8, significance: 0.1 })).toBe(
      studentQuantile({ tail: 0.1 / 16, degreesOfFreedom: 5 }),
    );
    expect(outlierCritical({ count: 8 })).toBe(outlierCritical({ count: 8, significance: 0.05 }));
  });

  testRefusals(outlierCritical, { count: 8, significance: 0.1 }, [
    ['count', 3, 'TOO_FEW'],
    ['count', 4.5, 'NOT_WHOLE'],
    ['count', 2e7, 'OUT_OF_RANGE'],
    ['count', undefined, 'REQUIRED'],
    ['count', '8', 'WRONG_TYPE'],
    ['significance', 0, 'OUT_OF_RANGE'],
    ['significance', 1, 'OUT_OF_RANGE'],
    ['significance', 5e-324, 'OUT_OF_RANGE'],
    ['significance', Infinity, 'NOT_FINITE'],
    ['signficance', 0.1, 'UNKNOWN_FIELD'],
  ]);
});
