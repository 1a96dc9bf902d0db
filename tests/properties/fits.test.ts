import fc from 'fast-check';
import { inverse, Matrix, SingularValueDecomposition } from 'ml-matrix';
import { describe, expect, test } from 'vitest';
import { fitCircle, fitLine, leaveOneOut } from 'settline/geometry';
import { circleThrough, stakeOutliers } from 'settline/stakes';
import { runs } from '../runs.js';

type Point = readonly [x: number, y: number];

const FEWER = runs(300);

/** Where a site lies: at its own origin, or far from that of a grid. */
const corner = fc.constantFrom<Point>([0, 0], [500_000, 4_500_000], [-2_000_000, 7_000_000]);

/** Points along a line in any direction, some centimetres off. */
const row = fc
  .tuple(
    fc.double({ min: 0, max: Math.PI, noNaN: true }),
    fc.array(
      fc.tuple(
        fc.double({ min: -50, max: 50, noNaN: true }),
        fc.double({ min: -0.05, max: 0.05, noNaN: true }),
      ),
      { minLength: 4, maxLength: 40 },
    ),
    corner,
  )
  .filter(([, list]) => Math.max(...list.map(([s]) => s)) - Math.min(...list.map(([s]) => s)) > 1)
  .map(([turn, list, [east, north]]) =>
    list.map(([s, d]): Point => [
      east + s * Math.cos(turn) - d * Math.sin(turn),
      north + s * Math.sin(turn) + d * Math.cos(turn),
    ]),
  );

/** Direction and rms by the singular values of a general matrix package, centred. */
function svdLine(points: readonly Point[]): { direction: Point; rms: number } {
  // about the first point before the mean is taken, as the package itself cannot
  const [x0, y0] = points[0] ?? [0, 0];
  const local = points.map(([x, y]): Point => [x - x0, y - y0]);
  const mean = (k: 0 | 1) => local.reduce((sum, one) => sum + one[k], 0) / local.length;
  const [x, y] = [mean(0), mean(1)];
  const svd = new SingularValueDecomposition(
    new Matrix(local.map((one) => [one[0] - x, one[1] - y])),
  );
  const v = svd.rightSingularVectors;
  const [, least = 0] = svd.diagonal;
  return { direction: [v.get(0, 0), v.get(1, 0)], rms: least / Math.sqrt(points.length) };
}

describe('a line', () => {
  test('is that of a singular value decomposition to 1e-12, wherever the site lies', () => {
    fc.assert(
      fc.property(row, (points) => {
        const { direction, rms, residuals } = fitLine(points);
        const svd = svdLine(points);
        const sine = direction[0] * svd.direction[1] - direction[1] * svd.direction[0];
        expect(Math.abs(sine)).toBeLessThan(1e-12);
        const extent = Math.max(
          ...points.map(([x, y]) =>
            Math.hypot(x - (points[0]?.[0] ?? 0), y - (points[0]?.[1] ?? 0)),
          ),
        );
        expect(Math.abs(rms - svd.rms)).toBeLessThan(1e-12 * extent);
        const squares = residuals.reduce((sum, one) => sum + one * one, 0);
        expect(Math.sqrt(squares / points.length)).toBeCloseTo(rms, 14);
      }),
      FEWER,
    );
  });

  test('pairs and a flat array alike; the points are left alone', () => {
    fc.assert(
      fc.property(row, (points) => {
        const flat = new Float64Array(points.flat());
        const before = flat.slice();
        const fit = fitLine(flat);
        expect(flat).toEqual(before);
        expect(fit).toEqual(fitLine(points));
        expect(fit.residuals.every(Number.isFinite)).toBe(true);
      }),
      FEWER,
    );
  });
});

test('leaving one out in closed form is fitting the others', () => {
  const without = (points: readonly Point[], k: number) => points.filter((_, i) => i !== k);
  const spreadOf = (points: readonly Point[]) => {
    const [x0, y0] = points[0] ?? [0, 0];
    return Math.max(...points.map(([x, y]) => Math.hypot(x - x0, y - y0)));
  };
  fc.assert(
    fc.property(row, (points) => {
      // where the others are a heap, their direction is anybody's guess
      fc.pre(points.every((_, k) => spreadOf(without(points, k)) > 1));
      const { deleted, leverage } = leaveOneOut(points);
      const all = fitLine(points).direction;
      points.forEach(([x, y], k) => {
        const { centroid, direction } = fitLine(without(points, k));
        const way = direction[0] * all[0] + direction[1] * all[1] < 0 ? -1 : 1;
        const offset = way * (direction[0] * (y - centroid[1]) - direction[1] * (x - centroid[0]));
        // 7 000 000 m are told to a nanometre; far from the others that counts many times
        expect(Math.abs((deleted[k] ?? Number.NaN) - offset)).toBeLessThan(2e-7);
      });
      expect(leverage.reduce((sum, one) => sum + one, 0)).toBeCloseTo(2, 6);
    }),
    FEWER,
  );
});

describe('outliers', () => {
  const offsets = fc.array(fc.integer({ min: -20, max: 20 }), { minLength: 5, maxLength: 9 });

  test('in plan and in profile agree on a row that is straight to a hair', () => {
    fc.assert(
      fc.property(offsets, (list) => {
        const plan = stakeOutliers({
          stakes: list.map((mm, k) => ({ id: `S${k}`, x: `${3 * k} m`, y: `${mm} mm` })),
        });
        const profile = stakeOutliers({
          stakes: list.map((mm, k) => ({
            id: `S${k}`,
            station: `${3 * k} m`,
            elevation: `${mm} mm`,
          })),
        });
        profile.stakes.forEach(({ deleted, studentized }, k) => {
          const other = plan.stakes[k];
          expect(other?.deleted.toNumber('mm')).toBeCloseTo(deleted.toNumber('mm'), 1);
          // an infinite value of the one is a huge one of the other
          if (studentized === null || Math.abs(studentized) > 100) return;
          expect(other?.studentized).toBeCloseTo(studentized, 1);
        });
      }),
      runs(25),
    );
  });

  test('do not depend on where the site lies, nor on a slope through all marks', () => {
    fc.assert(
      fc.property(
        offsets,
        fc.integer({ min: -9e6, max: 9e6 }),
        fc.integer({ min: -90, max: 90 }),
        (list, shift, fall) => {
          const of = (base: number, slope: number) =>
            stakeOutliers({
              stakes: list.map((mm, k) => ({
                id: `S${k}`,
                station: `${10 * base + 3000 * k} mm`,
                elevation: `${base + slope * k + mm} mm`,
              })),
            });
          const [here, there] = [of(0, 0), of(shift, fall)];
          expect(there.outliers).toEqual(here.outliers);
          there.stakes.forEach(({ deleted }, k) => {
            expect(deleted.equals(here.stakes[k]?.deleted ?? deleted.times(2))).toBe(true);
          });
        },
      ),
      runs(40),
    );
  });
});

describe('a circle', () => {
  /** Whole points on a circle of 65 about the origin: 36 of them. */
  const onCircle = [
    [65, 0],
    [63, 16],
    [60, 25],
    [56, 33],
    [52, 39],
    [39, 52],
    [33, 56],
    [25, 60],
    [16, 63],
    [0, 65],
    [-16, 63],
    [-25, 60],
    [-33, 56],
    [-60, 25],
    [-65, 0],
    [-63, -16],
    [-39, -52],
    [0, -65],
    [33, -56],
    [63, -16],
  ] as const;
  const some = fc.uniqueArray(fc.constantFrom(...onCircle), { minLength: 3, maxLength: 10 });
  const shift = fc.tuple(fc.integer({ min: -1e9, max: 1e9 }), fc.integer({ min: -1e9, max: 1e9 }));

  test('through exact points is exact, wherever the site lies', () => {
    fc.assert(
      fc.property(some, shift, (points, [east, north]) => {
        const { centre, radius, isExact, residuals } = circleThrough({
          points: points.map(([x, y]) => ({ x: `${x + east} mm`, y: `${y + north} mm` })),
        });
        expect(isExact).toBe(true);
        expect(radius.to('mm').toString()).toBe('65');
        expect(centre.x.to('mm').toString()).toBe(`${east}`);
        expect(centre.y.to('mm').toString()).toBe(`${north}`);
        expect(residuals.every((one) => one.isZero())).toBe(true);
      }),
      FEWER,
    );
  });

  test('fitted in floats to exact points that span an arc, to nine digits', () => {
    fc.assert(
      fc.property(some, corner, (points, [east, north]) => {
        const moved = points.map(([x, y]): Point => [x + east, y + north]);
        // three neighbours span little of the circle, and then whole floats do not fix it to the end
        const { turn } = circleThrough({
          points: points.map(([x, y]) => ({ x: `${x} m`, y: `${y} m` })),
        });
        if (turn.toNumber('deg') < 60) return;
        const { centre, radius, rms } = fitCircle(moved);
        expect(Math.abs(radius - 65)).toBeLessThan(1e-7);
        expect(Math.abs(centre[0] - east)).toBeLessThan(1e-7);
        expect(Math.abs(centre[1] - north)).toBeLessThan(1e-7);
        expect(rms).toBeLessThan(1e-8);
      }),
      FEWER,
    );
  });

  const arc = fc
    .tuple(
      fc.double({ min: 1, max: 40, noNaN: true }),
      fc.double({ min: 0.4, max: 6, noNaN: true }),
      fc.array(fc.double({ min: -0.02, max: 0.02, noNaN: true }), { minLength: 5, maxLength: 30 }),
    )
    .map(([radius, span, errors]) =>
      errors.map((error, k): Point => {
        const turn = (span * k) / (errors.length - 1);
        return [(radius + error) * Math.cos(turn), (radius + error) * Math.sin(turn)];
      }),
    );

  test('turned, shifted and scaled with its points', () => {
    fc.assert(
      fc.property(
        arc,
        fc.double({ min: 0, max: 6, noNaN: true }),
        fc.constantFrom(0.001, 0.3048, 7),
        (points, turn, scale) => {
          const [c, s] = [Math.cos(turn), Math.sin(turn)];
          const here = fitCircle(points);
          const there = fitCircle(
            points.map(([x, y]): Point => [
              scale * (c * x - s * y) + 12,
              scale * (s * x + c * y) - 7,
            ]),
          );
          const near = (a: number, b: number) => {
            expect(Math.abs(a - b)).toBeLessThan(1e-8 * scale * (1 + here.radius));
          };
          near(there.radius, scale * here.radius);
          near(there.rms, scale * here.rms);
          near(there.centre[0], scale * (c * here.centre[0] - s * here.centre[1]) + 12);
          near(there.centre[1], scale * (s * here.centre[0] + c * here.centre[1]) - 7);
        },
      ),
      FEWER,
    );
  });

  const DAMPED: Point[] = [
    [1.181803242936977, 0],
    [1.1758991492613706, 0.1179834555466999],
    [1.1582458599869245, 0.23478805940572237],
    [1.129019942412112, 0.34924679472023556],
    [1.088512869655365, 0.46021585979950497],
  ];

  test('its radius is as uncertain as the normal equations say', () => {
    fc.assert(
      fc.property(arc, (points) => {
        const { centre, radius, residuals, radiusUncertainty } = fitCircle(points);
        const rows = points.map(([x, y]) => {
          const distance = Math.hypot(x - centre[0], y - centre[1]);
          return [(x - centre[0]) / distance, (y - centre[1]) / distance, 1];
        });
        const equations = new Matrix(rows);
        const variance = inverse(equations.transpose().mmul(equations)).get(2, 2);
        const squares = residuals.reduce((sum, one) => sum + one * one, 0);
        const expected = Math.sqrt((squares / (points.length - 3)) * variance);
        expect(Math.abs(radiusUncertainty - expected)).toBeLessThan(
          1e-6 * (expected + 1e-9 * radius),
        );
      }),
      // the last step that these points take is a damped one
      { ...FEWER, examples: [[DAMPED]] },
    );
  });

  test('no circle close to it does better', () => {
    fc.assert(
      fc.property(
        arc,
        fc.double({ min: 0, max: 6, noNaN: true }),
        fc.constantFrom(1e-3, 1e-5),
        (points, way, step) => {
          const { centre, radius, rms } = fitCircle(points);
          const squares = (x: number, y: number, r: number) =>
            Math.sqrt(
              points.reduce((sum, [px, py]) => sum + (Math.hypot(px - x, py - y) - r) ** 2, 0) /
                points.length,
            );
          const [dx, dy] = [step * Math.cos(way), step * Math.sin(way)];
          for (const dr of [-step, 0, step]) {
            expect(squares(centre[0] + dx, centre[1] + dy, radius + dr)).toBeGreaterThanOrEqual(
              rms - 1e-12,
            );
          }
        },
      ),
      FEWER,
    );
  });
});
