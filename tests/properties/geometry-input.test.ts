// Whatever a kernel gets, it answers in finite numbers or throws a SettlineError.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isSettlineError } from 'settline';
import * as geometry from 'settline/geometry';
import { runs } from '../runs.js';

const kernels = Object.entries(geometry) as [string, (...given: unknown[]) => unknown][];

/** Every number in a result. */
function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (typeof value !== 'object' || value === null) return [];
  const entries: unknown[] = ArrayBuffer.isView(value)
    ? Array.from(value as Float64Array)
    : Object.values(value);
  return entries.flatMap(numbersIn);
}

function answersOrRefuses(run: () => unknown): void {
  let result: unknown;
  try {
    result = run();
  } catch (error) {
    if (!isSettlineError(error)) throw error;
    expect(error.issues.every(({ message }) => message !== '')).toBe(true);
    return;
  }
  // one zero, and neither NaN nor infinity
  const isSound = (number: number) => Number.isFinite(number) && !Object.is(number, -0);
  expect(numbersIn(result).filter((number) => !isSound(number))).toEqual([]);
}

/** Numbers that tend to break sums: none, huge, tiny, equal to each other, whole. */
const awkward = fc.oneof(
  { weight: 6, arbitrary: fc.integer({ min: -4, max: 4 }) },
  { weight: 3, arbitrary: fc.double({ min: -1e8, max: 1e8, noNaN: true }) },
  { weight: 2, arbitrary: fc.double() },
  fc.constantFrom(0, -0, NaN, Infinity, 1e-320, 5e-324, 1e-160, 1e-60, 1e60, 1e99, 1e150, 1e300),
);
/** Of one size: all of them tiny, huge or usual, so that a kernel gets past its checks. */
const oneSize = fc
  .tuple(
    fc.constantFrom(1, 1, 1, 1e-320, 1e-200, 1e-120, 1e-30, 1e30, 1e70, 1e99, 1e140),
    fc.integer({ min: 2, max: 9 }),
  )
  .chain(([size, most]) =>
    fc.array(
      fc.integer({ min: -most, max: most }).map((value) => value * size),
      { minLength: 4, maxLength: 36 },
    ),
  );
const floats = fc
  .oneof(fc.array(awkward, { maxLength: 30 }), oneSize)
  .map((values) => Float64Array.from(values));
/** A ring in order round its middle, so that it seldom crosses itself. */
const ring = fc
  .tuple(
    fc.array(fc.double({ min: 0.01, max: 5, noNaN: true }), { minLength: 3, maxLength: 12 }),
    fc.constantFrom(1, 1, 1e-300, 1e-150, 1e-90, 1e60, 1e99),
  )
  .map(([radii, size]) =>
    Float64Array.from(
      radii.flatMap((radius, k) => {
        const turn = (2 * Math.PI * k) / radii.length;
        return [size * radius * Math.cos(turn), size * radius * Math.sin(turn)];
      }),
    ),
  );
const pairs = fc.oneof(
  fc.array(fc.tuple(awkward, awkward), { maxLength: 12 }),
  fc.sparseArray(fc.tuple(awkward, awkward), { maxNumElements: 6 }),
  fc.array(fc.array(awkward, { maxLength: 3 }), { maxLength: 6 }),
);
const plane = fc.record(
  { z0: awkward, gradeX: awkward, gradeY: awkward, corners: floats, zO: awkward },
  { requiredKeys: [] },
);
const options = fc.record(
  {
    residualsInto: floats,
    length: awkward,
    tail: awkward,
    degreesOfFreedom: awkward,
    count: awkward,
    significance: awkward,
    existing: floats,
    design: fc.oneof(floats, plane),
    outline: fc.oneof(
      floats,
      ring,
      fc.array(floats, { maxLength: 3 }),
      fc.sparseArray(ring, { maxNumElements: 3 }),
    ),
  },
  { requiredKeys: [] },
);
const anything = fc.oneof(
  { weight: 3, arbitrary: floats },
  { weight: 2, arbitrary: ring },
  { weight: 2, arbitrary: pairs },
  { weight: 2, arbitrary: options },
  { weight: 1, arbitrary: awkward },
  {
    weight: 1,
    arbitrary: fc.anything({ withSparseArray: true, withTypedArray: true, withBigInt: true }),
  },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      undefined,
      null,
      '',
      'length',
      Symbol('ring'),
      new Array(4_294_967_295),
    ),
  },
);

test.each(kernels)('%s answers or refuses, whatever it gets', (_, kernel) => {
  fc.assert(
    fc.property(fc.array(anything, { maxLength: 3 }), (given) => {
      answersOrRefuses(() => kernel(...given));
    }),
    runs(300),
  );
});

test.each([
  'fitLine',
  'fitCircle',
  'leaveOneOut',
  'fitPlane',
  'ringMeasures',
  'ringArea',
  'ringCrossing',
] as const)('%s of floats of one size', (name) => {
  const kernel = geometry[name] as (given: unknown) => unknown;
  fc.assert(
    fc.property(fc.oneof(floats, ring), (given) => {
      answersOrRefuses(() => kernel(given));
    }),
    runs(500),
  );
});

test('widenRing of rings of one size', () => {
  const by = fc.oneof(
    fc.constantFrom(0, 5e-324, 1e-160, 1e-6, 1, 3, 1e60, 1e99, 1e100),
    fc.double({ min: 0, max: 10, noNaN: true }),
  );
  fc.assert(
    fc.property(fc.oneof(ring, floats), by, (given, far) => {
      answersOrRefuses(() => geometry.widenRing(given, far));
    }),
    runs(500),
  );
});

test('surfaceVolumes of surfaces of one size', () => {
  const triples = fc
    .oneof(fc.array(awkward, { minLength: 9, maxLength: 30 }), oneSize)
    .map((values) => Float64Array.from(values.slice(0, values.length - (values.length % 3))));
  const corners = fc.array(fc.integer({ min: -3, max: 3 }), { minLength: 12, maxLength: 12 });
  const against = fc.oneof(
    triples,
    plane,
    corners.map((list) => ({ corners: Float64Array.from(list) })),
    fc.constant({ z0: 0.5, gradeX: 0.1, gradeY: 0 }),
  );
  fc.assert(
    fc.property(
      triples,
      against,
      fc.option(fc.oneof(ring, floats), { nil: undefined }),
      (existing, design, outline) => {
        const given = outline === undefined ? { existing, design } : { existing, design, outline };
        answersOrRefuses(() => geometry.surfaceVolumes(given as never));
      },
    ),
    runs(500),
  );
});

test('scanStraightedge of profiles of one size', () => {
  const profile = fc
    .tuple(
      oneSize,
      fc.array(fc.double({ min: 0, max: 3, noNaN: true }), { minLength: 18, maxLength: 18 }),
      fc.constantFrom(1, 1, 1e-310, 1e-150, 1e60, 1e98),
    )
    .map(([heights, steps, size]) => {
      let station = 0;
      return Float64Array.from(
        heights.slice(0, 18).flatMap((height, k) => {
          station += (steps[k] ?? 1) * size;
          return [station, height];
        }),
      );
    });
  const length = fc.oneof(
    fc.double({ min: 0, max: 20 }),
    fc.constantFrom(5e-324, 1e-300, 1e-150, 1e61, 1e100, 1.7e308),
  );
  fc.assert(
    fc.property(profile, length, (given, edge) => {
      answersOrRefuses(() => geometry.scanStraightedge(given, { length: edge }));
    }),
    runs(500),
  );
});
