import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { outlineArea, widenOutline, type OutlineInput } from 'settline/outline';
import { length } from 'settline/units';

type Point = readonly [x: number, y: number];
const RUNS = { numRuns: 300 } as const;

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

  test('by a and then by b is by a + b where no corner vanishes', () => {
    fc.assert(
      fc.property(
        star,
        fc.integer({ min: 0, max: 20 }),
        fc.integer({ min: 0, max: 20 }),
        (points, a, b) => {
          const widen = (outline: OutlineInput, by: number) => {
            try {
              return widenOutline({ outline, by: length(by, 'm') });
            } catch {
              return undefined;
            }
          };
          const once = widen(metres(points), a + b);
          const first = widen(metres(points), a);
          const twice = first === undefined ? undefined : widen(first.outline, b);
          if (once === undefined || twice === undefined) return;
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
