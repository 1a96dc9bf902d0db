import { flatPoints, type BulkPoints } from '../bulk-points.js';
import { at } from '../floats.js';
import { directionOf, momentsOf, type LineMoments } from './line-moments.js';

/** Offset of every point from the line through the others. */
export interface LeaveOneOut {
  /** Offset from the orthogonal line of the others [metres], + left of the fitted direction. */
  readonly deleted: Float64Array;
  /**
   * The same over its standard error, from the scatter of the others. This is the externally
   * studentized residual: compare it with `outlierCritical`.
   */
  readonly studentized: Float64Array;
  /** Influence of each point on the line: 1 / count at the middle; the sum is 2. */
  readonly leverage: Float64Array;
  /** Number of the point with the largest studentized residual. */
  readonly worst: number;
}

/** From this share of the spread or of the squares, the line of the others is fitted again. */
const TOO_MUCH = 0.99;

/**
 * Leaves out each point in turn and gives its offset from the orthogonal least-squares line of the
 * others. A closed form is used, so a million points take a few passes. If one point has nearly all
 * of the spread or of the squares, the closed form loses digits and the others are fitted again. At
 * coordinates of 500 000 / 4 500 000 m the offsets are good to a nanometre.
 *
 * Formula: with d the point less the mean and S the moments, the others have the moments
 * `S - n / (n - 1) d d'` and the mean `-d / (n - 1)`. The standard error is
 * `s sqrt(1 + 1 / (n - 1) + x^2 / S1)`, with s^2 the squares of the others over `n - 3`, x the station
 * of the point from their mean and S1 the sum of squared stations. Scatter below the resolution of
 * floats at these coordinates is replaced by that resolution, so that no value is infinite.
 *
 * @param points - at least 4 points [metres], as `[x, y]` pairs or as a flat `Float64Array`
 *   `x0, y0, x1, y1 ...`; not changed
 * @returns deleted residuals [metres], studentized residuals, leverages, the worst point
 * @throws `TOO_FEW`, `WRONG_TYPE`, `NOT_FINITE`, `OUT_OF_RANGE`, `POINTS_COINCIDE`,
 *   `DIRECTION_UNDEFINED`
 * @source derived
 * @example
 * const row = leaveOneOut([[0, 0], [2, 0.001], [4, 0.05], [6, -0.001], [8, 0]]);
 * row.worst //=> 2
 * row.deleted[2]?.toFixed(3) //=> '0.050'
 */
export function leaveOneOut(points: BulkPoints): LeaveOneOut {
  const xy = flatPoints(points, { least: 4, words: 'leaving one out needs four points or more' });
  const frame = frameOf(xy);
  const { ux, uy, most, mixed, least } = frame;
  const { count, x0, y0, meanX, meanY } = frame.moments;
  const deleted = new Float64Array(count);
  const studentized = new Float64Array(count);
  const leverage = new Float64Array(count);
  const k = count / (count - 1);
  for (let i = 0; i < count; i += 1) {
    const dx = at(xy, 2 * i) - x0 - meanX;
    const dy = at(xy, 2 * i + 1) - y0 - meanY;
    const x = ux * dx + uy * dy;
    const y = ux * dy - uy * dx;
    leverage[i] = 1 / count + (x * x) / most;
    const a = most - k * x * x;
    const b = mixed - k * x * y;
    const c = least - k * y * y;
    const share = (x * x) / most + (least > 0 ? (y * y) / least : 0);
    if (share * k > TOO_MUCH || a <= c) {
      leaveOut(xy, frame, i, { deleted, studentized });
      continue;
    }
    // the product of both sums of squares, without the difference of two large products
    const product =
      most * least - mixed * mixed - k * (least * x * x - 2 * mixed * x * y + most * y * y);
    const spread = Math.sqrt((a - c) * (a - c) + 4 * b * b);
    const along = (a + c + spread) / 2;
    const tx = spread + a - c;
    const ty = 2 * b;
    const size = Math.sqrt(tx * tx + ty * ty);
    const station = (k * (tx * x + ty * y)) / size;
    // adding nothing turns a negative zero into zero
    const offset = (k * (tx * y - ty * x)) / size + 0;
    const scatter = Math.max(Math.sqrt(Math.max(product / along, 0) / (count - 3)), frame.finest);
    deleted[i] = offset;
    studentized[i] = offset / (scatter * Math.sqrt(k + (station * station) / along));
  }
  return Object.freeze({ deleted, studentized, leverage, worst: largestOf(studentized) });
}

/** The fitted line as a frame: x along it and y left of it, from the mean. */
interface Frame {
  readonly moments: LineMoments;
  readonly ux: number;
  readonly uy: number;
  /** `sum x^2`, `sum x y`, `sum y^2`. */
  readonly most: number;
  readonly mixed: number;
  readonly least: number;
  /** Resolution of floats at these coordinates. */
  readonly finest: number;
}

function frameOf(xy: Float64Array): Frame {
  const moments = momentsOf(xy);
  const [ux, uy] = directionOf(xy, moments);
  const { count, x0, y0, meanX, meanY } = moments;
  let most = 0;
  let mixed = 0;
  let least = 0;
  let largest = 0;
  for (let i = 0; i < count; i += 1) {
    const dx = at(xy, 2 * i) - x0 - meanX;
    const dy = at(xy, 2 * i + 1) - y0 - meanY;
    const x = ux * dx + uy * dy;
    const y = ux * dy - uy * dx;
    most += x * x;
    mixed += x * y;
    least += y * y;
    largest = Math.max(largest, Math.abs(at(xy, 2 * i)), Math.abs(at(xy, 2 * i + 1)));
  }
  return { moments, ux, uy, most, mixed, least, finest: largest * Number.EPSILON };
}

type Results = Pick<LeaveOneOut, 'deleted' | 'studentized'>;

/** Fits the others again, for the few points that fix the line almost alone. */
function leaveOut(xy: Float64Array, frame: Frame, left: number, out: Results): void {
  const moments = momentsOf(xy, left);
  const { count, x0, y0, meanX, meanY } = moments;
  const [ux, uy] = directionOf(xy, moments, left);
  // the same direction as the fitted line, not the opposite
  const way = ux * frame.ux + uy * frame.uy < 0 ? -1 : 1;
  const c = way * ux;
  const s = way * uy;
  const dx = at(xy, 2 * left) - (x0 + meanX);
  const dy = at(xy, 2 * left + 1) - (y0 + meanY);
  const station = c * dx + s * dy;
  const offset = c * dy - s * dx + 0;
  let squares = 0;
  for (let i = 0; i <= count; i += 1) {
    const px = at(xy, 2 * i) - x0 - meanX;
    const py = at(xy, 2 * i + 1) - y0 - meanY;
    const residual = i === left ? 0 : c * py - s * px;
    squares += residual * residual;
  }
  const rms = Math.sqrt(squares / count);
  const scatter = Math.max(rms * Math.sqrt(count / (count - 2)), frame.finest);
  const along = moments.a * c * c + 2 * moments.b * c * s + moments.c * s * s;
  out.deleted[left] = offset;
  out.studentized[left] =
    offset / (scatter * Math.sqrt(1 + 1 / count + (station * station) / along));
}

function largestOf(values: Float64Array): number {
  let worst = 0;
  for (let i = 1; i < values.length; i += 1) {
    if (Math.abs(at(values, i)) > Math.abs(at(values, worst))) worst = i;
  }
  return worst;
}
