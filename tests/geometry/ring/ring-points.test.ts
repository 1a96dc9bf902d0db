import { expect, test } from 'vitest';
import { ringArea, ringCrossing, ringMeasures, widenRing } from 'settline/geometry';
import { expectFault } from '../../faults.js';

test.each([ringArea, ringMeasures, ringCrossing, (xy: Float64Array) => widenRing(xy, 1)])(
  'wrong points are refused: %s',
  (run) => {
    expectFault(() => run([0, 0, 1, 0, 1, 1] as never), 'WRONG_TYPE');
    expectFault(() => run(undefined as never), 'WRONG_TYPE');
    expectFault(() => run(Float64Array.of(0, 0, 1, 0, 1, 1, 5)), 'WRONG_TYPE');
    expectFault(() => run(Float64Array.of(0, 0, 1, 0)), 'TOO_FEW');
    const issue = expectFault(() => run(Float64Array.of(0, 0, 1, NaN, 1, 1)), 'NOT_FINITE');
    expect(issue.params).toEqual({ point: 1, axis: 'y' });
    expect(issue.message).toBe('y of point 1 is NaN (the first point is point 0)');
    expectFault(() => run(Float64Array.of(0, 0, 1, 0, Infinity, 1)), 'NOT_FINITE');
    expectFault(() => run(null as never), 'WRONG_TYPE');
    expectFault(() => run(Object.create(Float64Array.prototype) as never), 'WRONG_TYPE');
  },
);

test.each([ringCrossing, (xy: Float64Array) => widenRing(xy, 1)])(
  'coordinates that cannot be multiplied are refused: %s',
  (run) => {
    expectFault(() => run(Float64Array.of(0, 0, 1e101, 0, 1, 1)), 'OUT_OF_RANGE');
    expectFault(() => run(Float64Array.of(0, 0, 1e-101, 0, 1, 1)), 'OUT_OF_RANGE');
  },
);
