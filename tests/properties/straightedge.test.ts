import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { scanStraightedge, straightedge } from 'settline/checks';
import { length } from 'settline/units';
import { SOME } from './arbitrary.js';

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
  straightedge({
    profile: readings.map(({ s, z }) => ({ station: length(s, 'mm'), height: length(z, 'mm') })),
    length: length(millimetres, 'mm'),
  });

/** A fraction of whole numbers that floats hold. */
type Fraction = readonly [n: number, d: number];
const isMore = ([a, b]: Fraction, [c, d]: Fraction): boolean => a * d > c * b;

/** Every pair of readings that an edge reaches, none between standing above it, and each between. */
function bruteForce(readings: readonly Reading[], reach: number): Fraction {
  let most: Fraction = [0, 1];
  readings.forEach((a, i) => {
    readings.slice(i + 1).forEach((b, k) => {
      const run = b.s - a.s;
      if (run > reach) return;
      const gaps = readings
        .slice(i + 1, i + 1 + k)
        .map(({ s, z }) => (b.z - a.z) * (s - a.s) - (z - a.z) * run);
      if (gaps.some((gap) => gap < 0)) return;
      for (const gap of gaps) if (isMore([gap, run], most)) most = [gap, run];
    });
  });
  return most;
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
      { numRuns: 300 },
    );
  });

  test('a longer edge never finds a smaller gap', () => {
    fc.assert(
      fc.property(profile(24, 12), edgeLength, edgeLength, (readings, a, b) => {
        const [short, long] = [exact(readings, Math.min(a, b)), exact(readings, Math.max(a, b))];
        expect(long.greatestGap.compare(short.greatestGap)).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 300 },
    );
  });
});

describe('scanStraightedge', () => {
  /** Whole numbers as metres: the same readings for both, exactly. */
  const both = (readings: readonly Reading[], reach: number) => {
    const scanned = scanStraightedge(Float64Array.from(readings.flatMap(({ s, z }) => [s, z])), {
      length: reach,
    });
    const { greatestGap, at, contacts } = exact(readings, reach);
    return { scanned, gap: greatestGap.toNumber('mm'), at: at.toNumber('mm'), contacts };
  };

  test('agrees with the exact one, contacts and all', () => {
    const cases = fc.oneof(profile(60, 3), profile(60, 1000), profile(200, 40));
    fc.assert(
      fc.property(cases, edgeLength, (readings, reach) => {
        const { scanned, gap, contacts } = both(readings, reach);
        expect(Math.abs(scanned.greatestGap - gap)).toBeLessThanOrEqual(1e-12);
        const [[s1], [s2]] = scanned.contacts;
        // equal gaps may be taken for each other in floats: then the contacts give that gap too
        if (s1 !== contacts[0].station.toNumber('mm')) return;
        expect(s2).toBe(contacts[1].station.toNumber('mm'));
      }),
      SOME,
    );
  });

  test('agrees on valleys, crowns and waves, where chords are long and nested', () => {
    const shapes: readonly ((s: number) => number)[] = [
      (s) => s * s,
      (s) => -s * s,
      (s) => Math.abs(s) * (s % 7 === 0 ? 1 : -1),
      (s) => (s * s * s) % 97,
      (s) => ((s >> 4) % 2) * 10 + (s % 3),
    ];
    for (const shape of shapes) {
      for (const reach of [1, 2, 3, 7, 31, 64, 100, 400]) {
        const readings = Array.from({ length: 150 }, (_, k) => ({ s: k - 70, z: shape(k - 70) }));
        const { scanned, gap } = both(readings, reach);
        expect(Math.abs(scanned.greatestGap - gap)).toBeLessThanOrEqual(1e-12 * Math.max(1, gap));
      }
    }
  });
});
