import fc from 'fast-check';
import { Matrix, solve } from 'ml-matrix';
import { describe, expect, test } from 'vitest';
import { fitPlane } from 'settline/geometry';
import {
  combineSlopes,
  fallBetween,
  gradeBreak,
  gradeLine,
  planeThrough,
  requiredStakes,
  slopesAlong,
  stepLayout,
  valleyLine,
  verticalCurve,
  warpedSurface,
} from 'settline/grading';
import { length, slope, type Length, type Slope } from 'settline/units';
import { expectFault } from '../faults.js';
import { runs } from '../runs.js';

/** Whole surfaces and lines: a few hundred of each. */
const FEW = runs(60);

const mm = (value: number): Length => length(value, 'mm');
const permille = (value: number): Slope => slope(`${value}/1000`, 'ratio');
const grade = fc.integer({ min: -120, max: 120 });
const level = fc.integer({ min: -3000, max: 3000 });
const place = fc.integer({ min: -40_000, max: 40_000 });

type Point = readonly [x: number, y: number, z: number];

/** Points in whole millimetres, not all on one line in plan. */
const cloud = fc
  .array(fc.tuple(place, place, level), { minLength: 3, maxLength: 9 })
  .filter((points) => {
    const [[x0, y0] = [0, 0], [x1, y1] = [0, 0]] = points;
    return points.some(([x, y]) => (x1 - x0) * (y - y0) !== (y1 - y0) * (x - x0));
  });

const plane = (points: readonly Point[], shift = { x: mm(0), y: mm(0), z: mm(0) }) =>
  planeThrough({
    points: points.map(([x, y, z]) => ({
      x: mm(x).plus(shift.x),
      y: mm(y).plus(shift.y),
      z: mm(z).plus(shift.z),
    })),
  });

const FAR = {
  x: length('500000 m').plus(length('1/3 in')),
  y: length('4500000 m').dividedBy(7),
  z: length('1234.5678 m'),
};

describe('planeThrough', () => {
  test('points of a plane give it back exactly, and no residuals', () => {
    fc.assert(
      fc.property(cloud, level, grade, grade, (points, z0, gx, gy) => {
        const onPlane = points.map(([x, y]) => ({
          x: mm(x),
          y: mm(y),
          z: mm(z0)
            .plus(mm(x).times(permille(gx)))
            .plus(mm(y).times(permille(gy))),
        }));
        const found = planeThrough({ points: onPlane });
        expect(found.isExact).toBe(true);
        expect(found.gradeX.equals(permille(gx))).toBe(true);
        expect(found.gradeY.equals(permille(gy))).toBe(true);
        expect(found.elevationAt({ x: '0 m', y: '0 m' }).equals(mm(z0))).toBe(true);
        expect(found.isLevel).toBe(gx === 0 && gy === 0);
      }),
      FEW,
    );
  });

  test('least squares: residuals sum to nothing, by themselves and times x and y', () => {
    fc.assert(
      fc.property(cloud, (points) => {
        const { residuals } = plane(points);
        // sums of fractions with more than 120 digits below are kept to 250 digits
        const isNothing = (sum: Length) => Math.abs(sum.toNumber('m')) < 1e-90;
        const sumOf = (weight: (point: Point) => number) =>
          residuals.reduce((sum, { residual }, k) => {
            const point = points[k] ?? [0, 0, 0];
            return sum.plus(residual.times(weight(point)));
          }, mm(0));
        expect(isNothing(sumOf(() => 1))).toBe(true);
        expect(isNothing(sumOf(([x]) => x))).toBe(true);
        expect(isNothing(sumOf(([, y]) => y))).toBe(true);
      }),
      FEW,
    );
  });

  test('shift: neither grades nor residuals change by a digit', () => {
    fc.assert(
      fc.property(cloud, (points) => {
        const [here, there] = [plane(points), plane(points, FAR)];
        expect(there.gradeX.equals(here.gradeX)).toBe(true);
        expect(there.gradeY.equals(here.gradeY)).toBe(true);
        expect(there.slope.equals(here.slope)).toBe(true);
        there.residuals.forEach(({ residual }, k) => {
          expect(residual.equals(here.residuals[k]?.residual ?? mm(1))).toBe(true);
        });
        expect(there.rms.equals(here.rms)).toBe(true);
      }),
      FEW,
    );
  });

  test('rotation by a quarter turn and by 3-4-5: the same slope, the grades turned', () => {
    fc.assert(
      fc.property(cloud, (points) => {
        const here = plane(points);
        const quarter = plane(points.map(([x, y, z]): Point => [-y, x, z]));
        expect(quarter.gradeX.equals(here.gradeY.negated())).toBe(true);
        expect(quarter.gradeY.equals(here.gradeX)).toBe(true);
        expect(quarter.rms.equals(here.rms)).toBe(true);
        // coordinates and levels times 5, turned by (3, 4) / 5
        const turned = plane(
          points.map(([x, y, z]): Point => [3 * x - 4 * y, 4 * x + 3 * y, 5 * z]),
        );
        const expected = here.gradeX.times(3).minus(here.gradeY.times(4)).dividedBy(5);
        expect(turned.gradeX.equals(expected)).toBe(true);
        expect(turned.slope.minus(here.slope).abs().toNumber('ratio')).toBeLessThan(1e-35);
        if (here.downhillAzimuth !== null && quarter.downhillAzimuth !== null) {
          // counter-clockwise in plan is less azimuth
          const less = here.downhillAzimuth.minus(quarter.downhillAzimuth).toNumber('deg');
          expect((less + 360) % 360).toBeCloseTo(90, 9);
        }
      }),
      FEW,
    );
  });

  test('unit: the same points in inches', () => {
    fc.assert(
      fc.property(cloud, (points) => {
        const inch = (value: number) => ({ value: `${value}/25.4`, unit: 'in' }) as const;
        const found = planeThrough({
          points: points.map(([x, y, z]) => ({ x: inch(x), y: inch(y), z: inch(z) })),
        });
        expect(found.gradeX.equals(plane(points).gradeX)).toBe(true);
        expect(found.rms.equals(plane(points).rms)).toBe(true);
      }),
      FEW,
    );
  });

  test('fixed levels have no residual, whatever the others do', () => {
    fc.assert(
      fc.property(cloud, fc.integer({ min: 1, max: 2 }), (points, count) => {
        const run = () =>
          planeThrough({
            points: points.map(([x, y, z], k) => ({
              x: mm(x),
              y: mm(y),
              z: mm(z),
              fixed: k < count,
            })),
          });
        const [a, b] = points;
        if (count === 2 && a?.[0] === b?.[0] && a?.[1] === b?.[1]) {
          expectFault(run, 'POINTS_COLLINEAR');
          return;
        }
        const { residuals } = run();
        for (const { residual } of residuals.slice(0, count)) expect(residual.isZero()).toBe(true);
      }),
      FEW,
    );
  });
});

describe('fitPlane', () => {
  const metres = fc.double({ min: -50, max: 50, noNaN: true });
  const scan = fc
    .array(fc.tuple(metres, metres, fc.double({ min: -0.05, max: 0.05, noNaN: true })), {
      minLength: 8,
      maxLength: 200,
    })
    // spread both ways, as a surface is
    .map((points) => [
      ...points,
      [-50, -50, 0] as const,
      [50, -50, 0] as const,
      [50, 50, 0.01] as const,
      [-50, 50, 0] as const,
    ]);
  const grades = fc.double({ min: -0.1, max: 0.1, noNaN: true });

  test('agrees with a matrix package and with the ledger, wherever the site lies', () => {
    fc.assert(
      fc.property(
        scan,
        grades,
        grades,
        fc.constantFrom([0, 0], [500_000, 4_500_000]),
        (points, gx, gy, [east = 0, north = 0]) => {
          const xyz = Float64Array.from(
            points.flatMap(([x, y, noise]) => [x + east, y + north, 30 + gx * x + gy * y + noise]),
          );
          const residuals = new Float64Array(points.length);
          const fit = fitPlane(xyz, { residualsInto: residuals });
          // the same floats, centred for the matrix package, by singular values
          const at = (k: number) => [xyz[3 * k] ?? 0, xyz[3 * k + 1] ?? 0, xyz[3 * k + 2] ?? 0];
          const rows = points.map((_, k) => {
            const [x = 0, y = 0] = at(k);
            return [1, x - fit.centroid[0], y - fit.centroid[1]];
          });
          const right = Matrix.columnVector(points.map((_, k) => (at(k)[2] ?? 0) - 30));
          const [, x = Number.NaN, y = Number.NaN] = solve(
            new Matrix(rows),
            right,
            true,
          ).to1DArray();
          expect(Math.abs(fit.gradeX - x)).toBeLessThan(1e-12);
          expect(Math.abs(fit.gradeY - y)).toBeLessThan(1e-12);
          const squares = residuals.reduce((sum, one) => sum + one * one, 0);
          expect(fit.rms).toBeCloseTo(Math.sqrt(squares / points.length), 12);
          const sum = residuals.reduce((total, one) => total + one, 0);
          expect(Math.abs(sum)).toBeLessThan(1e-9 * points.length);
        },
      ),
      FEW,
    );
  });

  test('agrees with the exact plane to a nanometre', () => {
    fc.assert(
      fc.property(
        cloud.filter((points) => points.length > 4),
        fc.constantFrom(0, 4_500_000),
        (points, far) => {
          const exact = plane(points, { x: mm(far * 1000), y: mm(0), z: mm(0) });
          const xyz = points.flatMap(([x, y, z]) => [x / 1000 + far, y / 1000, z / 1000]);
          // a cloud that is all but a line is refused by the float fit
          let fit;
          try {
            fit = fitPlane(Float64Array.from(xyz));
          } catch {
            return;
          }
          const spread = Math.hypot(...points.map(([x]) => x / 1000));
          const bound = far === 0 ? 1e-9 : 1e-6;
          if (spread < 10 || exact.slope.toNumber('ratio') > 1) return;
          expect(Math.abs(fit.rms - exact.rms.toNumber('m'))).toBeLessThan(bound);
        },
      ),
      FEW,
    );
  });
});

describe('gradeLine', () => {
  const line = fc
    .tuple(
      level,
      fc.array(fc.tuple(fc.integer({ min: 1, max: 20_000 }), level), {
        minLength: 1,
        maxLength: 6,
      }),
    )
    .map(([first, steps]) => {
      let station = 0;
      const points = steps.map(([step, z]) => {
        station += step;
        return { station: mm(station), elevation: mm(z) };
      });
      return [{ station: mm(0), elevation: mm(first) }, ...points];
    });

  test('runs through its points, and is straight between them', () => {
    fc.assert(
      fc.property(line, (points) => {
        const found = gradeLine({ points });
        points.forEach(({ station, elevation }, k) => {
          expect(found.elevationAt(station).equals(elevation)).toBe(true);
          const before = points[k - 1];
          if (before === undefined) return;
          const middle = found.elevationAt(station.plus(before.station).dividedBy(2));
          expect(middle.times(2).equals(elevation.plus(before.elevation))).toBe(true);
        });
      }),
      FEW,
    );
  });

  test('walked the other way it is the same line', () => {
    fc.assert(
      fc.property(line, fc.integer({ min: 0, max: 1000 }), (points, part) => {
        const there = gradeLine({ points });
        const end = there.length;
        const back = gradeLine({
          points: [...points]
            .reverse()
            .map(({ station, elevation }) => ({ station: end.minus(station), elevation })),
        });
        const station = end.times(part).dividedBy(1000);
        expect(back.elevationAt(end.minus(station)).equals(there.elevationAt(station))).toBe(true);
        expect(back.breaks.map(({ kind }) => kind).reverse()).toEqual(
          there.breaks.map(({ kind }) => kind),
        );
      }),
      FEW,
    );
  });

  test('stations at an elevation stand at it, and none is forgotten', () => {
    fc.assert(
      fc.property(line, level, (points, z) => {
        const found = gradeLine({ points });
        const stations = found.stationsAt(mm(z));
        for (const station of stations) {
          expect(found.elevationAt(station).equals(mm(z))).toBe(true);
          expect(found.at(station).extrapolated).toBe(false);
        }
        const signs = points.map(({ elevation }) => elevation.compare(mm(z)));
        const crossings = signs.filter(
          (sign, k) => sign === 0 || (k > 0 && sign * (signs[k - 1] ?? 0) < 0),
        );
        expect(stations).toHaveLength(crossings.length);
      }),
      FEW,
    );
  });

  test('its stakes: every break and end, none further apart than the spacing, none for nothing', () => {
    fc.assert(
      fc.property(line, fc.integer({ min: 500, max: 9000 }), (points, spacing) => {
        const found = gradeLine({ points });
        const { stakes, longestGap, count } = requiredStakes({ line: found, spacing: mm(spacing) });
        expect(longestGap.compare(mm(spacing))).toBeLessThanOrEqual(0);
        const stations = stakes.map(({ station }) => station);
        for (const { station } of found.points) {
          expect(stations.some((one) => one.equals(station))).toBe(true);
        }
        stakes.slice(1).forEach(({ station }, k) => {
          const gap = station.minus(stakes[k]?.station ?? station);
          expect(gap.isZero() || gap.isNegative()).toBe(false);
          expect(gap.equals(stakes[k]?.toNext ?? mm(0))).toBe(true);
        });
        const least = found.segments.reduce(
          (sum, one) => sum + Math.ceil(one.length.toNumber('mm') / spacing - 1e-9),
          1,
        );
        expect(count).toBe(least);
      }),
      FEW,
    );
  });
});

describe('verticalCurve', () => {
  test('leaves and joins its grades, turns where the grade is nothing, and mirrors', () => {
    fc.assert(
      fc.property(grade, grade, fc.integer({ min: 100, max: 90_000 }), (g1, g2, run) => {
        const curve = verticalCurve({
          start: { station: '0 m', elevation: '30 m' },
          before: permille(g1),
          after: permille(g2),
          length: mm(run),
        });
        expect(curve.at(mm(0)).grade.equals(permille(g1))).toBe(true);
        expect(curve.at(mm(run)).grade.equals(permille(g2))).toBe(true);
        expect(curve.elevationAt(mm(run)).equals(curve.end.elevation)).toBe(true);
        const middle = curve.elevationAt(mm(run).dividedBy(2));
        const off = middle.minus(curve.intersection.elevation).abs();
        expect(off.equals(curve.middleOffset)).toBe(true);
        expect(curve.turningPoint === null).toBe(g1 * g2 >= 0);
        if (curve.turningPoint !== null) {
          expect(curve.at(curve.turningPoint.station).grade.isZero()).toBe(true);
        }
        const mirrored = verticalCurve({
          start: { station: '0 m', elevation: curve.end.elevation },
          before: permille(-g2),
          after: permille(-g1),
          length: mm(run),
        });
        const [a, b] = [curve.elevationAt(mm(run / 5)), mirrored.elevationAt(mm((run * 4) / 5))];
        expect(Math.abs(a.minus(b).toNumber('m'))).toBeLessThan(1e-12);
      }),
      FEW,
    );
  });
});

describe('warpedSurface', () => {
  const corners = fc.record({
    startRight: level,
    endRight: level,
    startLeft: level,
    endLeft: level,
  });
  const run = (levels: Readonly<Record<string, number>>) =>
    warpedSurface({
      length: '12 m',
      width: '5 m',
      corners: {
        startRight: mm(levels['startRight'] ?? 0),
        endRight: mm(levels['endRight'] ?? 0),
        startLeft: mm(levels['startLeft'] ?? 0),
        endLeft: mm(levels['endLeft'] ?? 0),
      },
    });
  const part = fc.integer({ min: 0, max: 100 });

  test('slopes stay between the flattest and the steepest; lines along and across are straight', () => {
    fc.assert(
      fc.property(corners, part, part, (levels, u, v) => {
        const surface = run(levels);
        const at = (s: number, t: number) =>
          surface.at({
            station: length('12 m').times(s).dividedBy(100),
            offset: length('5 m').times(t).dividedBy(100),
          });
        const here = at(u, v);
        expect(here.extrapolated).toBe(false);
        const hair = 1e-30;
        expect(here.steepest.minus(surface.steepest).toNumber('ratio')).toBeLessThan(hair);
        expect(surface.flattest.minus(here.steepest).toNumber('ratio')).toBeLessThan(hair);
        const along = at(0, v)
          .elevation.times(100 - u)
          .plus(at(100, v).elevation.times(u));
        expect(along.dividedBy(100).equals(here.elevation)).toBe(true);
        const across = at(u, 0)
          .elevation.times(100 - v)
          .plus(at(u, 100).elevation.times(v));
        expect(across.dividedBy(100).equals(here.elevation)).toBe(true);
      }),
      FEW,
    );
  });

  test('without a twist it is the plane through its corners', () => {
    fc.assert(
      fc.property(level, level, level, part, (right, end, left, u) => {
        const surface = run({
          startRight: right,
          endRight: end,
          startLeft: left,
          endLeft: left + end - right,
        });
        expect(surface.isPlane).toBe(true);
        const same = planeThrough({
          points: [
            { x: '0 m', y: '0 m', z: mm(right) },
            { x: '12 m', y: '0 m', z: mm(end) },
            { x: '0 m', y: '5 m', z: mm(left) },
          ],
        });
        expect(surface.steepest.minus(same.slope).abs().toNumber('ratio')).toBeLessThan(1e-35);
        const [x, y] = [length('12 m').times(u).dividedBy(100), length('1.7 m')];
        const here = surface.elevationAt({ station: x, offset: y });
        expect(here.equals(same.elevationAt({ x, y }))).toBe(true);
      }),
      FEW,
    );
  });
});

describe('slopes', () => {
  test('long and cross slope, put together again, are the steepest one', () => {
    fc.assert(
      fc.property(grade, grade, fc.integer({ min: -400, max: 400 }), (gx, gy, degrees) => {
        const travel = { value: degrees, unit: 'deg' } as const;
        const { longSlope, crossSlope } = slopesAlong({
          gradeX: permille(gx),
          gradeY: permille(gy),
          travel,
        });
        const back = combineSlopes({ longSlope, crossSlope, travel });
        expect(back.steepest.toNumber('ratio')).toBeCloseTo(Math.hypot(gx, gy) / 1000, 14);
        if (gx === 0 && gy === 0) return;
        const [x, y] = [-gx, -gy];
        const azimuth = ((Math.atan2(x, y) * 180) / Math.PI + 360) % 360;
        const off = Math.abs((back.downhillAzimuth?.toNumber('deg') ?? Number.NaN) - azimuth);
        expect(Math.min(off, 360 - off)).toBeLessThan(1e-9);
      }),
      FEW,
    );
  });

  test('the line of two planes lies in both, and is no steeper than either', () => {
    fc.assert(
      fc.property(
        fc.tuple(grade, grade),
        fc.tuple(grade, grade),
        level,
        fc.tuple(place, place),
        ([ax, ay], [bx, by], dz, [px, py]) => {
          fc.pre(ax !== bx || ay !== by);
          const planeOf = (gx: number, gy: number, z: number) => ({
            gradeX: permille(gx),
            gradeY: permille(gy),
            point: { x: mm(0), y: mm(0), z: mm(z) },
          });
          const [first, second] = [planeOf(ax, ay, 0), planeOf(bx, by, dz)];
          fc.pre((ax - bx) * px + (ay - by) * py !== dz * 1000);
          const valley = valleyLine({
            first,
            second,
            inFirst: { x: mm(px), y: mm(py) },
            path: [
              { x: '-100 m', y: '-100 m' },
              { x: '100 m', y: '-90 m' },
              { x: '90 m', y: '100 m' },
            ],
          });
          const heightOn = (gx: number, gy: number, z: number, x: Length, y: Length) =>
            mm(z)
              .plus(x.times(permille(gx)))
              .plus(y.times(permille(gy)));
          for (const { x, y, z } of [valley.point, ...valley.stakes]) {
            expect(heightOn(ax, ay, 0, x, y).equals(z)).toBe(true);
            expect(heightOn(bx, by, dz, x, y).equals(z)).toBe(true);
          }
          const most = Math.min(Math.hypot(ax, ay), Math.hypot(bx, by)) / 1000;
          expect(valley.slope.toNumber('ratio')).toBeLessThanOrEqual(most + 1e-15);
          const other = valleyLine({
            first: second,
            second: first,
            inFirst: { x: mm(px), y: mm(py) },
          });
          expect(other.shape).toBe(valley.shape === 'sag' ? 'crest' : 'sag');
        },
      ),
      FEW,
    );
  });

  test('lowered by what it lacks, a fall is just enough', () => {
    fc.assert(
      fc.property(level, level, fc.integer({ min: 1, max: 30_000 }), (from, to, run) => {
        const fixed = { from: mm(from), distance: mm(run), minimumFall: '2%' } as const;
        const { margin, shortfall, isEnough } = fallBetween({ ...fixed, to: mm(to) });
        expect(shortfall.isNegative()).toBe(false);
        expect(shortfall.equals(isEnough ? mm(0) : margin.negated())).toBe(true);
        const mended = fallBetween({ ...fixed, to: mm(to).minus(shortfall) });
        expect(mended.isEnough).toBe(true);
        if (!isEnough) expect(mended.fall.equals(slope('2%'))).toBe(true);
      }),
      FEW,
    );
  });

  test('a break is spread over as few steps as the limit allows, all alike', () => {
    fc.assert(
      fc.property(grade, grade, fc.integer({ min: 1, max: 60 }), (g1, g2, most) => {
        const { transition } = gradeBreak({
          before: permille(g1),
          after: permille(g2),
          limit: { change: permille(most), distance: '3 m' },
        });
        const grades = transition?.grades ?? [];
        expect(transition?.breaks).toBe(Math.ceil(Math.abs(g2 - g1) / most));
        expect(grades.at(-1)?.equals(permille(g2))).toBe(true);
        grades.slice(1).forEach((one, k) => {
          const step = one.minus(grades[k] ?? one).abs();
          expect(step.compare(permille(most))).toBeLessThanOrEqual(0);
        });
      }),
      FEW,
    );
  });

  test('steps: equal risers as few as can be, and the rise exactly', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 200, max: 3000 }),
        fc.integer({ min: 100, max: 200 }),
        fc.integer({ min: 0, max: 20 }),
        (rise, most, fall) => {
          const steps = stepLayout({
            rise: mm(rise),
            maximumRiser: mm(most),
            tread: '300 mm',
            treadFall: permille(fall),
          });
          expect(steps.riser.compare(mm(most))).toBeLessThanOrEqual(0);
          const total = steps.riser.times(steps.risers).plus(steps.treadRise.times(steps.treads));
          expect(total.equals(mm(rise))).toBe(true);
          // one riser less would not do
          const fewer = mm(most)
            .times(steps.risers - 1)
            .plus(steps.treadRise.times(steps.treads - 1));
          expect(fewer.compare(mm(rise))).toBe(-1);
        },
      ),
      FEW,
    );
  });
});
