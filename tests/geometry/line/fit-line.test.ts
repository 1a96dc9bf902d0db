import { runInNewContext } from 'node:vm';
import { describe, expect, test } from 'vitest';
import { fitLine } from 'settline/geometry';
import { expectFault, faultsOf } from '../../faults.js';

describe('orthogonal fit', () => {
  test('a vertical line', () => {
    const fit = fitLine([
      [3, 0],
      [3, 4],
      [3, 8],
    ]);
    expect(fit.direction).toEqual([0, 1]);
    expect(fit.centroid).toEqual([3, 4]);
    expect(fit.rms).toBe(0);
  });

  test('runs from the first point to the last', () => {
    expect(
      fitLine([
        [8, 0],
        [0, 0],
      ]).direction,
    ).toEqual([-1, 0]);
    expect(
      fitLine([
        [0, 8],
        [0, 0],
      ]).direction,
    ).toEqual([0, -1]);
  });

  test('residuals are + left of the direction, and rms is theirs', () => {
    const fit = fitLine([
      [0, 0],
      [5, 3],
      [10, 0],
    ]);
    expect(Array.from(fit.residuals)).toEqual([-1, 2, -1]);
    expect(fit.rms).toBeCloseTo(Math.sqrt(2), 15);
  });

  test('takes a flat array, and does not change it', () => {
    const xy = new Float64Array([0, 0, 5, 3, 10, 0]);
    const copy = xy.slice();
    expect(fitLine(xy)).toEqual(
      fitLine([
        [0, 0],
        [5, 3],
        [10, 0],
      ]),
    );
    expect(xy).toEqual(copy);
  });

  test('holds to a nanometre at 500 000 / 4 500 000', () => {
    const n = 101;
    const local = Array.from({ length: n }, (_, i) => {
      const bend = ((i * 7) % 11) / 1000 - 0.005;
      return [i * 0.8 - bend * 0.6, i * 0.6 + bend * 0.8] as const;
    });
    const near = fitLine(local);
    const far = fitLine(local.map(([x, y]) => [x + 500_000, y + 4_500_000] as const));
    for (let i = 0; i < n; i += 1) {
      expect(Math.abs((near.residuals[i] ?? 1) - (far.residuals[i] ?? 0))).toBeLessThan(2e-9);
    }
    expect(far.direction[0]).toBeCloseTo(near.direction[0], 9);
  });
});

const LINE = Float64Array.of(0, 0, 3, 4);

describe('refuses', () => {
  test.each([
    [() => fitLine([]), 'TOO_FEW'],
    [() => fitLine([[0, 0]]), 'TOO_FEW'],
    [() => fitLine(new Float64Array([0, 0, 1])), 'WRONG_TYPE'],
    [
      () =>
        fitLine([
          [1, 1],
          [1, 1],
        ]),
      'POINTS_COINCIDE',
    ],
    [
      () =>
        fitLine([
          [0, 0],
          [1, 0],
          [1, 1],
          [0, 1],
        ]),
      'DIRECTION_UNDEFINED',
    ],
    [
      () =>
        fitLine([
          [0, 0],
          [1, Number.NaN],
        ]),
      'NOT_FINITE',
    ],
    [
      () =>
        fitLine([
          [0, 0],
          [1, Number.POSITIVE_INFINITY],
        ]),
      'NOT_FINITE',
    ],
    [() => fitLine([[0, 0], 5] as never), 'WRONG_TYPE'],
    [
      () =>
        fitLine([
          [0, 0],
          ['1', 1],
        ] as never),
      'WRONG_TYPE',
    ],
    [() => fitLine('points' as never), 'WRONG_TYPE'],
    [() => fitLine(null as never), 'WRONG_TYPE'],
    [
      () =>
        fitLine([
          [0, 0, 0],
          [1, 1, 1],
        ] as never),
      'WRONG_TYPE',
    ],
    // holes in a list, as many as a list can have
    [() => fitLine([[0, 0], , [1, 1]] as never), 'WRONG_TYPE'],
    [() => fitLine(new Array(2 ** 32 - 1) as never), 'WRONG_TYPE'],
    [() => fitLine(Object.create(Float64Array.prototype) as never), 'WRONG_TYPE'],
    [() => fitLine(LINE, null as never), 'WRONG_TYPE'],
    [() => fitLine(LINE, new Float64Array(2) as never), 'WRONG_TYPE'],
    [() => fitLine(LINE, { residualsInto: [0, 0] } as never), 'WRONG_TYPE'],
    [() => fitLine(LINE, { residualsInto: new Float64Array(3) }), 'WRONG_TYPE'],
    [() => fitLine(LINE, { residualInto: new Float64Array(2) } as never), 'UNKNOWN_FIELD'],
    [() => fitLine(Float64Array.of(0, 0, 1e76, 0)), 'OUT_OF_RANGE'],
    [() => fitLine(Float64Array.of(0, 0, 1e-80, 0)), 'POINTS_COINCIDE'],
  ] as const)('%s', (run, code) => {
    expectFault(run, code);
  });
});

test('an unknown option names the one that was meant, every unknown one at once', () => {
  const options = { residualInto: new Float64Array(2), weights: [1, 1] };
  const faults = faultsOf(() => fitLine(LINE, options as never));
  expect(faults.map(({ code, path }) => `${code} ${path.join()}`)).toEqual([
    'UNKNOWN_FIELD residualInto',
    'UNKNOWN_FIELD weights',
  ]);
  expect(faults[0]?.params).toEqual({ key: 'residualInto', meant: 'residualsInto' });
  expect(faults[1]?.message).toContain('This object takes residualsInto');
});

test('takes floats that another realm has made', () => {
  const foreign = runInNewContext('Float64Array.of(0, 0, 3, 4)') as Float64Array;
  expect(foreign).not.toBeInstanceOf(Float64Array);
  expect(fitLine(foreign).direction).toEqual([0.6, 0.8]);
});

test('a first point far from all the others costs no digits', () => {
  // a hundred thousand on the line y = 0.3 x, thousandths that no float holds exactly
  const count = 100_000;
  const xy = new Float64Array(2 * count);
  for (let k = 1; k < count; k += 1) {
    const x = 1000 + (k % 1000) * 0.001;
    xy[2 * k] = x;
    xy[2 * k + 1] = 0.3 * x;
  }
  const { residuals } = fitLine(xy);
  expect(residuals.every((one) => Math.abs(one) < 1e-9)).toBe(true);
});
