import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkFlatness } from 'settline/checks';
import { scanStraightedge } from 'settline/geometry';
import { length } from 'settline/units';
import { SOME } from './arbitrary.js';
import { runs } from '../runs.js';

/** Whole millimetres along and up: so floats are exact where they are only added and compared. */
interface Reading {
  readonly s: number;
  readonly z: number;
}

const profile = (most: number, rough: number): fc.Arbitrary<Reading[]> =>
  fc
    .array(
      fc.record({
        step: fc.integer({ min: 1, max: 400 }),
        z: fc.integer({ min: -rough, max: rough }),
      }),
      { minLength: 2, maxLength: most },
    )
    .map((rows) => {
      let s = 0;
      return rows.map(({ step, z }) => ({ s: (s += step), z }));
    });

/** Long enough to reach from one reading to the next. */
const edgeLength = fc.integer({ min: 400, max: 3000 });

const exact = (readings: readonly Reading[], millimetres: number) =>
  checkFlatness({
    profile: readings.map(({ s, z }) => ({ station: length(s, 'mm'), height: length(z, 'mm') })),
    length: length(millimetres, 'mm'),
  });

/** A fraction of whole numbers that floats hold. */
type Fraction = readonly [n: number, d: number];
const isMore = ([a, b]: Fraction, [c, d]: Fraction): boolean => a * d > c * b;

/** Every pair of readings that an edge reaches, none between standing above it, and each between. */
function bruteForce(readings: readonly Reading[], reach: number): Fraction {
  const [s, z] = [readings.map((one) => one.s), readings.map((one) => one.z)];
  let most: Fraction = [0, 1];
  for (let i = 0; i < s.length; i += 1) {
    for (let j = i + 1; j < s.length && at(s, j) - at(s, i) <= reach; j += 1) {
      const run = at(s, j) - at(s, i);
      const deepest = deepestBetween(s, z, i, j);
      if (deepest !== undefined && isMore([deepest, run], most)) most = [deepest, run];
    }
  }
  return most;
}

const at = (values: readonly number[], index: number): number => values[index] ?? Number.NaN;

/** The greatest gap below a chord, times its run; undefined where something stands above it. */
function deepestBetween(
  s: readonly number[],
  z: readonly number[],
  i: number,
  j: number,
): number | undefined {
  const [rise, run] = [at(z, j) - at(z, i), at(s, j) - at(s, i)];
  let deepest = 0;
  for (let k = i + 1; k < j; k += 1) {
    const gap = rise * (at(s, k) - at(s, i)) - (at(z, k) - at(z, i)) * run;
    if (gap < 0) return undefined;
    if (gap > deepest) deepest = gap;
  }
  return deepest;
}

describe('straightedge', () => {
  test('the gap is that of a brute-force search over all contact pairs', () => {
    fc.assert(
      fc.property(profile(24, 12), edgeLength, (readings, reach) => {
        const [n, d] = bruteForce(readings, reach);
        const edge = exact(readings, reach);
        expect(edge.greatestGap.times(d).equals(length(n, 'mm'))).toBe(true);
      }),
      SOME,
    );
  });

  test('the edge rests on its contacts: nothing within its reach stands above it', () => {
    fc.assert(
      fc.property(profile(24, 12), edgeLength, (readings, reach) => {
        const edge = exact(readings, reach);
        const [a, b] = edge.contacts;
        const run = b.station.minus(a.station);
        fc.pre(edge.greatestGap.compare(length(0, 'mm')) > 0);
        expect(run.compare(length(reach, 'mm'))).toBeLessThanOrEqual(0);
        for (const { s, z } of readings) {
          const along = length(s, 'mm').minus(a.station);
          if (along.isNegative() || along.compare(length(reach, 'mm')) > 0) continue;
          const up = length(z, 'mm').minus(a.height);
          const above = up.times(run).minus(b.height.minus(a.height).times(along));
          expect(above.isZero() || above.isNegative()).toBe(true);
        }
      }),
      SOME,
    );
  });

  test('does not change when the profile is shifted, raised, tilted or turned end for end', () => {
    const shift = fc.integer({ min: -1_000_000, max: 1_000_000 });
    const tilt = fc.integer({ min: -20, max: 20 });
    fc.assert(
      fc.property(profile(24, 12), edgeLength, shift, tilt, (readings, reach, by, slope) => {
        const { greatestGap } = exact(readings, reach);
        const moved = readings.map(({ s, z }) => ({ s: s + by, z: z - 3 * by }));
        const tilted = readings.map(({ s, z }) => ({ s, z: z + slope * s }));
        const turned = readings.map(({ s, z }) => ({ s: -s, z })).reverse();
        for (const other of [moved, tilted, turned]) {
          expect(exact(other, reach).greatestGap.equals(greatestGap)).toBe(true);
        }
      }),
      runs(150),
    );
  });

  test('a longer edge never finds a smaller gap', () => {
    fc.assert(
      fc.property(profile(24, 12), edgeLength, edgeLength, (readings, a, b) => {
        const [short, long] = [exact(readings, Math.min(a, b)), exact(readings, Math.max(a, b))];
        expect(long.greatestGap.compare(short.greatestGap)).toBeGreaterThanOrEqual(0);
      }),
      runs(150),
    );
  });
});

describe('scanStraightedge', () => {
  /** The whole numbers as metres: the same for both, exactly. */
  const scan = (readings: readonly Reading[], reach: number) =>
    scanStraightedge(Float64Array.from(readings.flatMap(({ s, z }) => [s, z])), { length: reach });

  /** The gap over a station that a pair of contacts leaves. */
  const gapAt = (readings: readonly Reading[], { at, contacts }: ReturnType<typeof scan>) => {
    const [[s1, z1], [s2, z2]] = contacts;
    const below = readings.find(({ s }) => s === at);
    return z1 + ((z2 - z1) * (at - s1)) / (s2 - s1) - (below?.z ?? Number.NaN);
  };

  function expectAgreement(readings: readonly Reading[], reach: number, gap: number): void {
    const scanned = scan(readings, reach);
    const [[s1], [s2]] = scanned.contacts;
    expect(Math.abs(scanned.greatestGap - gap)).toBeLessThanOrEqual(1e-12 * Math.max(1, gap));
    expect(Math.abs(gapAt(readings, scanned) - gap)).toBeLessThanOrEqual(1e-12 * Math.max(1, gap));
    expect(s2 - s1).toBeLessThanOrEqual(reach);
    expect(scanned.at).toBeGreaterThanOrEqual(s1);
    expect(scanned.at).toBeLessThan(s2);
  }

  test('agrees with the exact one', () => {
    const cases = fc.oneof(profile(60, 3), profile(60, 1000), profile(200, 40));
    fc.assert(
      fc.property(cases, edgeLength, (readings, reach) => {
        expectAgreement(readings, reach, exact(readings, reach).greatestGap.toNumber('mm'));
      }),
      SOME,
    );
  });

  const shapes: Readonly<Record<string, (s: number) => number>> = {
    valley: (s) => s * s,
    crown: (s) => -s * s,
    comb: (s) => Math.abs(s) * (s % 7 === 0 ? 1 : -1),
    scattered: (s) => (s * s * s) % 97,
    steps: (s) => ((s >> 4) % 2) * 10 + (s % 3),
    'nested valleys': (s) => s * s + 900 * (s & -s),
    flat: () => 0,
  };

  test.each(Object.entries(shapes))('agrees with the brute force on a %s', (_, shape) => {
    // with few readings under the edge, and with so many that it looks at hulls
    for (const [count, reaches] of [
      [120, [1, 2, 3, 7, 31, 64, 119]],
      [440, [410, 439]],
    ] as const) {
      const readings = Array.from({ length: count }, (__, k) => {
        const s = k - (count >> 1);
        return { s, z: shape(s) };
      });
      for (const reach of reaches) {
        const [n, d] = bruteForce(readings, reach);
        expectAgreement(readings, reach, n / d);
      }
    }
  });

  test('agrees with the brute force on rough ground with hundreds of readings under the edge', () => {
    const heights = fc.array(fc.integer({ min: -500, max: 500 }), {
      minLength: 402,
      maxLength: 480,
    });
    fc.assert(
      fc.property(heights, fc.integer({ min: -9, max: 9 }), (list, bend) => {
        const readings = list.map((z, s) => ({ s, z: z + bend * (((s - 200) ** 2) >> 4) }));
        const [n, d] = bruteForce(readings, 401);
        expectAgreement(readings, 401, n / d);
      }),
      runs(8),
    );
  });

  test('holds its precision far from the origin', () => {
    const near = Array.from({ length: 900 }, (_, k) => ({ s: k, z: (k * k) % 61 }));
    const far = near.map(({ s, z }) => ({ s: s + 500_000, z: z / 1024 + 4096 }));
    expect(scan(far, 450).greatestGap).toBe(scan(near, 450).greatestGap / 1024);
  });
});
