import { fault } from '../../errors.js';
import { MOST_SPREAD, unusable } from '../bulk-points.js';
import { at, isFloats } from '../floats.js';
import { givenResiduals, type ResidualOptions } from '../residuals.js';

/** A least-squares plane, in metres. */
export interface BulkPlane {
  /** Mean of the points, x, y and z [metres]; the plane runs through it. */
  readonly centroid: readonly [x: number, y: number, z: number];
  /** Slope along x, + rising with x. */
  readonly gradeX: number;
  /** Slope along y, + rising with y. */
  readonly gradeY: number;
  /** Steepest slope, not negative. */
  readonly slope: number;
  /** Root mean square of the vertical distances [metres]. */
  readonly rms: number;
}

/**
 * Fits a plane to many points by least squares of the vertical distances:
 * `z - zm = gx (x - xm) + gy (y - ym)` with the means xm, ym, zm. It takes one pass: the sums are
 * measured from a plane through a sample of the points, so they are small and lose no digits. At
 * coordinates of 500 000 / 4 500 000 m, where a float itself is good to a nanometre, slopes are good
 * to 1e-12 and levels on the plane to a nanometre.
 *
 * @param points - at least 3 points [metres] as a flat `Float64Array` `x0, y0, z0, x1 ...`; not changed
 * @returns centroid and rms [metres], slopes [rise over run]; with `residualsInto`, point less plane
 *   [metres] in that array
 * @throws `TOO_FEW`, `WRONG_TYPE`, `NOT_FINITE`, `OUT_OF_RANGE`, `POINTS_COLLINEAR`,
 *   `UNKNOWN_FIELD`
 * @source derived
 * @example
 * const xyz = new Float64Array([0, 0, 30, 10, 0, 29.5, 0, 10, 30.25, 10, 10, 29.75]);
 * const plane = fitPlane(xyz);
 * plane.gradeX //=> -0.05
 * plane.gradeY //=> 0.025
 * plane.rms //=> 0
 */
export function fitPlane(points: Float64Array, options?: ResidualOptions): BulkPlane {
  const count = countOf(points);
  const residuals = givenResiduals(count, options);
  const sample = samplePlane(points, count);
  const sums = sumsOff(points, sample, 1);
  if (!(sums.xx + sums.yy + sums.rr <= MOST_SPREAD)) throw unusable(points, 3);
  const turn = solve(sums);
  if (turn === undefined)
    throw fault('POINTS_COLLINEAR', 'all points are on one line in plan. Take one off the line');
  const plane = corrected(sample, sums, turn);
  if (residuals !== undefined) fillResiduals(points, plane, residuals);
  const { centroid, gradeX, gradeY } = plane;
  return Object.freeze({
    centroid: Object.freeze(centroid),
    gradeX,
    gradeY,
    slope: Math.hypot(gradeX, gradeY),
    rms: Math.sqrt(turn.left / count),
  });
}

/** Points are on one line if their squared spread across it is less than this share of that along it. */
const FLATTEST = 1e-13;
/** Number of points that the first plane is fitted to. */
const SAMPLE = 64;

interface Plane {
  readonly centroid: readonly [x: number, y: number, z: number];
  readonly gradeX: number;
  readonly gradeY: number;
}

function countOf(points: unknown): number {
  if (!isFloats(points) || points.length % 3 !== 0) {
    throw fault('WRONG_TYPE', 'expected a Float64Array x0, y0, z0, x1 ...');
  }
  const count = points.length / 3;
  if (count >= 3) return count;
  throw fault('TOO_FEW', `a plane needs three points or more, got ${count}`, { got: count });
}

/** Least-squares plane of points spread evenly over the list; level if they are in line. */
function samplePlane(points: Float64Array, count: number): Plane {
  const level: Plane = {
    centroid: [at(points, 0), at(points, 1), at(points, 2)],
    gradeX: 0,
    gradeY: 0,
  };
  const step = Math.max(1, Math.floor(count / SAMPLE));
  // twice: about the first point, then about the middle
  const middle = corrected(level, sumsOff(points, level, step), { x: 0, y: 0 });
  const sums = sumsOff(points, middle, step);
  return corrected(middle, sums, solve(sums) ?? { x: 0, y: 0 });
}

/** Sums over every `step`th point; r is the vertical distance from a plane. */
function sumsOff(points: Float64Array, { centroid, gradeX, gradeY }: Plane, step: number) {
  const sums = addUp(points, Float64Array.of(...centroid, gradeX, gradeY), 3 * step);
  const n = Math.ceil(points.length / (3 * step));
  const sx = at(sums, 0);
  const sy = at(sums, 1);
  const sr = at(sums, 2);
  const x = sx / n;
  const y = sy / n;
  const r = sr / n;
  return {
    middle: [x, y, r] as const,
    xx: at(sums, 3) - sx * x,
    xy: at(sums, 4) - sx * y,
    yy: at(sums, 5) - sy * y,
    xr: at(sums, 6) - sx * r,
    yr: at(sums, 7) - sy * r,
    rr: at(sums, 8) - sr * r,
  };
}

/**
 * The loop over all points. Floats go in and out in typed arrays only, so that the compiler treats
 * them as floats; in objects they cost four times as much.
 */
function addUp(points: Float64Array, plane: Float64Array, stride: number): Float64Array {
  const x0 = at(plane, 0);
  const y0 = at(plane, 1);
  const z0 = at(plane, 2);
  const gradeX = at(plane, 3);
  const gradeY = at(plane, 4);
  let sx = 0;
  let sy = 0;
  let sr = 0;
  let xx = 0;
  let xy = 0;
  let yy = 0;
  let xr = 0;
  let yr = 0;
  let rr = 0;
  for (let i = 0; i < points.length; i += stride) {
    const x = at(points, i) - x0;
    const y = at(points, i + 1) - y0;
    const r = at(points, i + 2) - z0 - (gradeX * x + gradeY * y);
    sx += x;
    sy += y;
    sr += r;
    xx += x * x;
    xy += x * y;
    yy += y * y;
    xr += x * r;
    yr += y * r;
    rr += r * r;
  }
  return Float64Array.of(sx, sy, sr, xx, xy, yy, xr, yr, rr);
}

type Sums = ReturnType<typeof sumsOff>;

/** Change of the plane's slopes, and the squares that remain; undefined for points in line. */
function solve({ xx, xy, yy, xr, yr, rr }: Sums) {
  const det = xx * yy - xy * xy;
  if (!(det > FLATTEST * (xx + yy) * (xx + yy))) return undefined;
  const x = (xr * yy - yr * xy) / det;
  const y = (yr * xx - xr * xy) / det;
  // squares: below zero by rounding alone
  return { x, y, left: Math.max(0, rr - x * xr - y * yr) };
}

function corrected(
  { centroid, gradeX, gradeY }: Plane,
  { middle: [x, y, r] }: Sums,
  turn: { readonly x: number; readonly y: number },
): Plane {
  const [x0, y0, z0] = centroid;
  return {
    centroid: [x0 + x + 0, y0 + y + 0, z0 + gradeX * x + gradeY * y + r + 0],
    gradeX: gradeX + turn.x,
    gradeY: gradeY + turn.y,
  };
}

function fillResiduals(points: Float64Array, plane: Plane, residuals: Float64Array): void {
  const [mx, my, mz] = plane.centroid;
  const { gradeX, gradeY } = plane;
  for (let i = 0, k = 0; i < points.length; i += 3, k += 1) {
    const rise = gradeX * (at(points, i) - mx) + gradeY * (at(points, i + 1) - my);
    // adding nothing turns a negative zero into zero
    residuals[k] = at(points, i + 2) - mz - rise + 0;
  }
}
