import { createRequire } from 'node:module';
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { attempt, isSettlineError } from 'settline';
import { ringArea, ringCrossing, ringMeasures, widenRing } from 'settline/geometry';
import { outlineArea, widenOutline, type OutlineInput } from 'settline/outline';
import { length } from 'settline/units';
import { comparePairs } from '../../src/outline/crossing-edges.js';
import { exactSites } from '../../src/outline/exact-sites.js';
import { floatSites } from '../../src/geometry/ring/float-sites.js';
import { sweepForCrossing } from '../../src/geometry/ring/sweep-for-crossing.js';
import { readNumber } from '../../src/units/read-number.js';
import { runs } from '../runs.js';

type Point = readonly [x: number, y: number];
const RUNS = runs(60);

const metres = (points: readonly Point[]): OutlineInput => ({ unit: 'm', points });

/** A star round the origin: simple by construction, convex or not. */
const star: fc.Arbitrary<Point[]> = fc
  .array(fc.integer({ min: 200, max: 1000 }), { minLength: 3, maxLength: 12 })
  .map((radii) =>
    radii.map((radius, i): Point => {
      const angle = (2 * Math.PI * i) / radii.length;
      return [Math.round(radius * Math.cos(angle)), Math.round(radius * Math.sin(angle))];
    }),
  );

const far = fc.integer({ min: -5_000_000, max: 5_000_000 });

const rectangle = fc
  .tuple(fc.integer({ min: 1, max: 100 }), fc.integer({ min: 1, max: 100 }))
  .map(([a, b]): Point[] => [
    [0, 0],
    [a, 0],
    [a, b],
    [0, b],
  ]);

const areaOf = (points: readonly Point[]) => outlineArea({ outline: metres(points) }).area;

describe('area', () => {
  test('does not depend on shift, start, orientation or quarter turns', () => {
    fc.assert(
      fc.property(star, far, far, fc.nat(), (points, dx, dy, start) => {
        const area = areaOf(points);
        const k = start % points.length;
        for (const same of [
          points.map(([x, y]): Point => [x + dx, y + dy]),
          [...points.slice(k), ...points.slice(0, k)],
          [...points].reverse(),
          points.map(([x, y]): Point => [-y, x]),
          points.map(([x, y]): Point => [-x, y]),
        ]) {
          expect(areaOf(same).equals(area)).toBe(true);
        }
        const turned = points.map(([x, y]): Point => [3 * x - 4 * y, 4 * x + 3 * y]);
        expect(areaOf(turned).equals(area.times(25))).toBe(true);
      }),
      RUNS,
    );
  });

  test('is the sum of the parts of a split from the middle', () => {
    fc.assert(
      fc.property(star, (points) => {
        if (points.length < 4) return;
        const fan = points.map((a, i): Point[] => [
          [0, 0],
          a,
          points[(i + 1) % points.length] ?? a,
        ]);
        const sum = fan.map(areaOf).reduce((total, one) => total.plus(one));
        expect(sum.equals(areaOf(points))).toBe(true);
      }),
      RUNS,
    );
  });
});

describe('widening', () => {
  test('a rectangle by a on each side: (l + 2a)(w + 2a), exactly', () => {
    fc.assert(
      fc.property(rectangle, fc.integer({ min: 0, max: 400 }), (points, quarters) => {
        const by = length(`${quarters}/64`, 'in');
        const [l, w] = [points[2]?.[0] ?? 0, points[2]?.[1] ?? 0];
        const wide = widenOutline({ outline: metres(points), by }).area;
        const [a, b] = [length(l, 'm').plus(by.times(2)), length(w, 'm').plus(by.times(2))];
        expect(wide.equals(a.times(b))).toBe(true);
      }),
      RUNS,
    );
  });

  test('a convex outline: A + P d + d^2 sum(tan(turn / 2))', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 20 }), fc.integer({ min: 1, max: 50 }), (n, d) => {
        const points = Array.from({ length: n }, (_, i): Point => [
          10 * Math.cos((2 * Math.PI * i) / n),
          10 * Math.sin((2 * Math.PI * i) / n),
        ]);
        const { area, perimeter } = outlineArea({ outline: metres(points) });
        const by = d / 10;
        const expected =
          area.toNumber('m2') + perimeter.toNumber('m') * by + by * by * n * Math.tan(Math.PI / n);
        const got = widenOutline({ outline: metres(points), by: length(by, 'm') }).area.toNumber(
          'm2',
        );
        expect(got / expected).toBeCloseTo(1, 12);
      }),
      RUNS,
    );
  });

  test('by a and then by b is by a + b where nothing closes up', () => {
    fc.assert(
      fc.property(
        star,
        fc.integer({ min: 0, max: 40 }),
        fc.integer({ min: 0, max: 40 }),
        (points, a, b) => {
          const once = widenOutline({ outline: metres(points), by: length(a + b, 'm') });
          const first = widenOutline({ outline: metres(points), by: length(a, 'm') });
          fc.pre(!once.closesUp && !first.closesUp);
          const twice = widenOutline({ outline: first.outline, by: length(b, 'm') });
          const difference = once.area.minus(twice.area).abs();
          expect(difference.toNumber('m2')).toBeLessThan(1e-20 * once.area.toNumber('m2') + 1e-20);
        },
      ),
      RUNS,
    );
  });

  test('never takes area away, and more never takes it away either', () => {
    fc.assert(
      fc.property(
        rectangle,
        fc.array(fc.integer({ min: 0, max: 30 }), { minLength: 4, maxLength: 4 }),
        fc.nat({ max: 3 }),
        (points, by, pick) => {
          const perEdge = by.map((one) => length(one, 'in'));
          const wide = widenOutline({ outline: metres(points), perEdge }).area;
          expect(wide.compare(areaOf(points))).toBeGreaterThanOrEqual(0);
          const more = perEdge.map((one, i) => (i === pick ? one.plus(length('1 in')) : one));
          expect(widenOutline({ outline: metres(points), perEdge: more }).area.compare(wide)).toBe(
            1,
          );
        },
      ),
      RUNS,
    );
  });
});

describe('round corners', () => {
  test('a convex outline: A + P d + pi d^2', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 12 }), fc.integer({ min: 1, max: 50 }), (n, d) => {
        const points = Array.from({ length: n }, (_, i): Point => [
          10 * Math.cos((2 * Math.PI * i) / n),
          10 * Math.sin((2 * Math.PI * i) / n),
        ]);
        const { area, perimeter } = outlineArea({ outline: metres(points) });
        const by = d / 10;
        const expected = area.toNumber('m2') + perimeter.toNumber('m') * by + Math.PI * by * by;
        const wide = widenOutline({
          outline: metres(points),
          by: length(by, 'm'),
          corners: 'round',
        });
        expect(wide.area.toNumber('m2') / expected).toBeCloseTo(1, 12);
      }),
      runs(20),
    );
  });

  test('by a, and once more by b: the arcs run on into their edges', () => {
    fc.assert(
      fc.property(
        star,
        fc.integer({ min: 1, max: 40 }),
        fc.integer({ min: 1, max: 40 }),
        (points, a, b) => {
          const widened = (outline: OutlineInput, by: number) =>
            widenOutline({ outline, by: length(by, 'm'), corners: 'round' });
          const [once, first] = [widened(metres(points), a + b), widened(metres(points), a)];
          fc.pre(!once.closesUp && !first.closesUp);
          const twice = widened({ points: first.outline, arcs: first.arcs }, b);
          const difference = once.area.minus(twice.area).abs();
          expect(difference.toNumber('m2')).toBeLessThan(1e-20 * once.area.toNumber('m2'));
          expect(twice.outline).toHaveLength(once.outline.length);
        },
      ),
      runs(20),
    );
  });

  test('never more than mitred ones', () => {
    fc.assert(
      fc.property(star, fc.integer({ min: 1, max: 100 }), (points, d) => {
        const by = length(d, 'm');
        const outline = metres(points);
        const [mitred, round] = (['mitred', 'round'] as const).map((corners) =>
          widenOutline({ outline, by, corners }).area.toNumber('m2'),
        );
        expect(round).toBeLessThanOrEqual((mitred ?? 0) * (1 + 1e-12));
      }),
      runs(30),
    );
  });
});

const bulky = (points: readonly Point[]) => Float64Array.from(points.flat());

describe('bulk rings', () => {
  test('agree with the exact ledger, wherever they lie', () => {
    fc.assert(
      fc.property(star, far, far, (points, dx, dy) => {
        const exact = outlineArea({ outline: metres(points) });
        const moved = bulky(points.map(([x, y]): Point => [x + dx, y + dy]));
        expect(ringArea(moved)).toBe(exact.area.toNumber('m2'));
        const { area, perimeter, centroid, orientation } = ringMeasures(moved);
        expect(area).toBe(exact.area.toNumber('m2'));
        expect(perimeter / exact.perimeter.toNumber('m')).toBeCloseTo(1, 14);
        expect(Math.abs(centroid[0] - dx - exact.centroid.x.toNumber('m'))).toBeLessThan(2e-9);
        expect(Math.abs(centroid[1] - dy - exact.centroid.y.toNumber('m'))).toBeLessThan(2e-9);
        expect(orientation).toBe(exact.orientation);
      }),
      RUNS,
    );
  });

  test('widened, they agree with the ledger too', () => {
    fc.assert(
      fc.property(star, fc.integer({ min: 0, max: 100 }), (points, d) => {
        const exact = widenOutline({ outline: metres(points), by: length(d, 'm') });
        const bulk = widenRing(bulky(points), d);
        expect(bulk.closesUp).toBe(exact.closesUp);
        expect(bulk.rings).toHaveLength(1 + exact.holes.length);
        expect(bulk.area / exact.area.toNumber('m2')).toBeCloseTo(1, 11);
      }),
      RUNS,
    );
  });

  test('adding a point on an edge, or the first point again, changes nothing', () => {
    fc.assert(
      fc.property(star, fc.nat(), (points, pick) => {
        const k = pick % points.length;
        const [a, b] = [points[k] ?? [0, 0], points[(k + 1) % points.length] ?? [0, 0]];
        const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
        const more = [...points.slice(0, k + 1), middle, ...points.slice(k + 1)];
        const closed = [...points, points[0] ?? [0, 0]];
        for (const same of [more, closed]) {
          expect(ringArea(bulky(same))).toBe(ringArea(bulky(points)));
          expect(ringCrossing(bulky(same))).toBeNull();
        }
      }),
      RUNS,
    );
  });
});

describe('crossings', () => {
  /** Few places, so that points coincide, touch and line up all the time. */
  const tangle = fc.array(
    fc.tuple(fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 6 })),
    {
      minLength: 3,
      maxLength: 9,
    },
  );
  const isOpen = (points: readonly Point[]) =>
    points.every(([x, y], k) => {
      const [nx, ny] = points[(k + 1) % points.length] ?? [x, y];
      return nx !== x || ny !== y;
    });
  const exact = (points: readonly Point[]) =>
    points.map(([x, y]) => ({ x: readNumber(x), y: readNumber(y) }));

  test('the sweep finds one exactly where comparing all pairs does', () => {
    fc.assert(
      fc.property(tangle, tangle, fc.boolean(), (one, other, both) => {
        fc.pre(isOpen(one) && isOpen(other));
        const rings = both ? [one, other] : [one];
        const sites = floatSites(rings.map(bulky));
        const pair = comparePairs(sites);
        const found = sweepForCrossing(sites);
        expect(found === undefined).toBe(pair === undefined);
        const alsoFound = sweepForCrossing(exactSites(rings.map(exact)));
        expect(alsoFound).toEqual(found);
        if (found === undefined) return;
        // the two that it names do cross or touch: alone with their ends they still do
        expect([found.ring, found.first]).not.toEqual([found.otherRing, found.second]);
      }),
      runs(7_000),
    );
  });

  test('a corner exactly on an edge is refused, and a hair off it is not', () => {
    const part = fc.integer({ min: 1, max: 999_999 });
    fc.assert(
      fc.property(part, part, (u, v) => {
        // in thirds of an edge no coordinate is a float
        const text = (value: number, hair = '') => `${(value / 1e6).toFixed(6)}${hair}`;
        const outline = (hair: string) => ({
          unit: 'ft' as const,
          points: [
            ['0', '0'],
            [text(3 * u), text(3 * v)],
            [text(3 * u), text(3 * v + 2e7)],
            [text(u), text(v, hair)],
            ['0', '20'],
          ] as const,
        });
        let code: unknown;
        try {
          outlineArea({ outline: outline('') });
        } catch (error) {
          code = isSettlineError(error) ? error.code : error;
        }
        expect(code).toBe('SELF_INTERSECTION');
        expect(() => outlineArea({ outline: outline('0000000000000000001') })).not.toThrow();
      }),
      RUNS,
    );
  });

  test('stars are sound, stars with two points swapped are as all pairs say', () => {
    fc.assert(
      fc.property(star, fc.nat(), fc.nat(), (points, a, b) => {
        expect(ringCrossing(bulky(points))).toBeNull();
        const swapped = [...points];
        const [i, j] = [a % points.length, b % points.length];
        [swapped[i], swapped[j]] = [points[j] ?? [0, 0], points[i] ?? [0, 0]];
        const pair = comparePairs(floatSites([bulky(swapped)]));
        expect(ringCrossing(bulky(swapped)) === null).toBe(pair === undefined);
      }),
      RUNS,
    );
  });
});

/** The part of the second opinion that is used here. */
interface Clipping {
  readonly PathsD: new () => { push_back(path: unknown): void; delete(): void };
  readonly JoinType: { readonly Miter: unknown; readonly Round: unknown };
  readonly EndType: { readonly Polygon: unknown };
  MakePathD(flat: readonly number[]): unknown;
  InflatePathsD(...args: unknown[]): { delete(): void };
  AreaPathsD(paths: unknown): number;
}

describe('a second opinion: another port of the clipping package, on the whole outline', () => {
  let clipping: Clipping;
  beforeAll(async () => {
    const load = createRequire(import.meta.url)('clipper2-wasm') as () => Promise<Clipping>;
    clipping = await load();
  });

  function inflated(rings: readonly (readonly Point[])[], by: number, isRound: boolean): number {
    const paths = new clipping.PathsD();
    rings.forEach((ring, index) => {
      const isLeft = ringMeasures(bulky(ring)).orientation === 'counter-clockwise';
      const turned = isLeft === (index === 0) ? ring : [...ring].reverse();
      paths.push_back(clipping.MakePathD(turned.flat()));
    });
    const { Miter, Round } = clipping.JoinType;
    const join = isRound ? Round : Miter;
    const out = clipping.InflatePathsD(paths, by, join, clipping.EndType.Polygon, 1e4, 6, 1e-5);
    const area = clipping.AreaPathsD(out);
    out.delete();
    paths.delete();
    return area;
  }

  /** A star with deep notches, and up to two islands near its middle. */
  const islands = fc.record({
    points: fc.array(fc.integer({ min: 320, max: 1000 }), { minLength: 4, maxLength: 20 }),
    holes: fc.array(fc.array(fc.integer({ min: 20, max: 100 }), { minLength: 3, maxLength: 7 }), {
      maxLength: 2,
    }),
  });
  const round = (radii: readonly number[], cx: number): Point[] =>
    radii.map((radius, i): Point => {
      const angle = (2 * Math.PI * i) / radii.length;
      const at = (value: number) => Math.round(10 * value) / 1000;
      return [cx + at(radius * Math.cos(angle)), at(radius * Math.sin(angle))];
    });

  test.each(['mitred', 'round'] as const)(
    '%s',
    (corners) => {
      fc.assert(
        fc.property(islands, fc.integer({ min: 1, max: 250 }), (shape, d) => {
          const points = round(shape.points, 0);
          const holes = shape.holes.map((radii, index) => round(radii, index === 0 ? -1.05 : 1.05));
          const outline = { unit: 'm', points, holes } as const;
          let wide;
          try {
            wide = widenOutline({ outline, by: length(d / 100, 'm'), corners });
          } catch (error) {
            // an island that sticks out of a notch
            expect(isSettlineError(error) && error.code).toBe('SELF_INTERSECTION');
            return;
          }
          const area = wide.area.toNumber('m2');
          const other = inflated([points, ...holes], d / 100, corners === 'round');
          const inChords = corners === 'round' && wide.closesUp;
          expect(Math.abs(area / other - 1)).toBeLessThan(inChords ? 3e-5 : 3e-6);
        }),
        runs(30),
      );
    },
    60_000,
  );
});

describe('what a widening gives back', () => {
  /** A star of corners in order round the origin, on whole or odd centimetres. */
  const star = fc
    .array(
      fc.tuple(fc.integer({ min: 200, max: 1000 }), fc.double({ min: 0, max: 0.8, noNaN: true })),
      {
        minLength: 4,
        maxLength: 10,
      },
    )
    .map((corners) =>
      corners.map(([radius, turn], k): [number, number] => {
        const angle = ((k + turn) / corners.length) * 2 * Math.PI;
        const centimetres = (value: number) => Math.round(radius * value) / 100 + 0;
        return [centimetres(Math.cos(angle)), centimetres(Math.sin(angle))];
      }),
    );

  test('is an outline again, with edges that stay put beside edges that move', () => {
    let checked = 0;
    fc.assert(
      fc.property(
        star,
        fc.array(fc.constantFrom('0 m', '0 m', '1 m', '2 m', '3 m')),
        (points, by) => {
          const outline = { unit: 'm', points } as const;
          if (!attempt(() => outlineArea({ outline })).ok) return;
          const perEdge = points.map((_, k) => by[k] ?? '1 m');
          const made = attempt(() => widenOutline({ outline, perEdge }));
          if (!made.ok) return;
          const { outline: corners, arcs, holes } = made.value;
          const again = outlineArea({ outline: { points: corners, arcs, holes } });
          expect(again.area.toNumber('m2')).toBeCloseTo(made.value.area.toNumber('m2'), 9);
          checked += 1;
        },
      ),
      runs(400),
    );
    expect(checked).toBeGreaterThan(100);
  });
});
