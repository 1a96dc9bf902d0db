import { fitLine } from './fit-line.js';
import { flatPoints, type BulkPoints } from '../bulk-points.js';
import { at } from '../floats.js';
import { mainDirection, momentsOf, type LineMoments } from './line-moments.js';

/** Every point against the line of the others. */
export interface LeaveOneOut {
  /** Offset from the orthogonal line of the others [metres], + left of the fitted direction. */
  readonly deleted: Float64Array;
  /**
   * The same over its standard error, from the scatter of the others: the externally studentized
   * residual, to compare with `outlierCritical`.
   */
  readonly studentized: Float64Array;
  /** How much each point holds the line: 1 / count at the middle, 2 in all. */
  readonly leverage: Float64Array;
  /** The point with the largest studentized residual. */
  readonly worst: number;
}

/** From this share of the spread and of the squares on the line of the others is fitted anew. */
const TOO_MUCH = 0.99;

/**
 * Leaves out each point in turn and says how far it stands off the orthogonal least-squares line of
 * the others: in closed form, so that a million points cost a few passes. Where one point carries
 * nearly all of the spread or of the squares the closed form would lose digits, and the others are
 * fitted anew. At coordinates of 500 000 / 4 500 000 m the offsets hold to a nanometre.
 *
 * Formula: with d the point less the mean and S the moments, the others have the moments
 * `S - n / (n - 1) d d'` and the mean `-d / (n - 1)`. The standard error is
 * `s sqrt(1 + 1 / (n - 1) + x^2 / S1)`, with s^2 the squares of the others over `n - 3`, x the station
 * of the point from their mean and S1 the sum of squared stations. Scatter finer than floats at these
 * coordinates can show is taken as that fine, so that no value is infinite.
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
  const frame = frameOf(xy, momentsOf(xy));
  const { count, ux, uy, x0, y0, meanX, meanY, most, mixed, least } = frame;
  const out = {
    deleted: new Float64Array(count),
    studentized: new Float64Array(count),
    leverage: new Float64Array(count),
  };
  const k = count / (count - 1);
  for (let i = 0; i < count; i += 1) {
    const dx = at(xy, 2 * i) - x0 - meanX;
    const dy = at(xy, 2 * i + 1) - y0 - meanY;
    const [x, y] = [ux * dx + uy * dy, ux * dy - uy * dx];
    out.leverage[i] = 1 / count + (x * x) / most;
    const [a, b, c] = [most - k * x * x, mixed - k * x * y, least - k * y * y];
    const share = (x * x) / most + (least > 0 ? (y * y) / least : 0);
    if (share * k > TOO_MUCH || a <= c) {
      leaveOut(xy, frame, i, out);
      continue;
    }
    // the product of both sums of squares, without the difference of two large products
    const product =
      most * least - mixed * mixed - k * (least * x * x - 2 * mixed * x * y + most * y * y);
    const spread = Math.sqrt((a - c) * (a - c) + 4 * b * b);
    const along = (a + c + spread) / 2;
    const [tx, ty] = [spread + a - c, 2 * b];
    const size = Math.sqrt(tx * tx + ty * ty);
    const station = (k * (tx * x + ty * y)) / size;
    // adding nothing turns a negative zero into zero
    const offset = (k * (tx * y - ty * x)) / size + 0;
    const scatter = Math.max(Math.sqrt(Math.max(product / along, 0) / (count - 3)), frame.finest);
    out.deleted[i] = offset;
    out.studentized[i] = offset / (scatter * Math.sqrt(k + (station * station) / along));
  }
  return Object.freeze({ ...out, worst: largestOf(out.studentized) });
}

/** The fitted line as a frame: x along it and y left of it, from the mean. */
interface Frame extends LineMoments {
  readonly ux: number;
  readonly uy: number;
  /** `sum x^2`, `sum x y`, `sum y^2`. */
  readonly most: number;
  readonly mixed: number;
  readonly least: number;
  /** What floats at these coordinates can tell apart. */
  readonly finest: number;
}

function frameOf(xy: Float64Array, moments: LineMoments): Frame {
  const [ax, ay] = mainDirection(moments.a, moments.b, moments.c);
  const { count, x0, y0, meanX, meanY } = moments;
  const last = xy.length - 2;
  const isAhead = (at(xy, last) - x0) * ax + (at(xy, last + 1) - y0) * ay >= 0;
  const [ux, uy] = isAhead ? [ax, ay] : [-ax, -ay];
  let [most, mixed, least, largest] = [0, 0, 0, 0];
  for (let i = 0; i < count; i += 1) {
    const dx = at(xy, 2 * i) - x0 - meanX;
    const dy = at(xy, 2 * i + 1) - y0 - meanY;
    const [x, y] = [ux * dx + uy * dy, ux * dy - uy * dx];
    most += x * x;
    mixed += x * y;
    least += y * y;
    largest = Math.max(largest, Math.abs(at(xy, 2 * i)), Math.abs(at(xy, 2 * i + 1)));
  }
  return { ...moments, ux, uy, most, mixed, least, finest: largest * Number.EPSILON };
}

type Results = Pick<LeaveOneOut, 'deleted' | 'studentized'>;

/** The long way, for the few points that hold the line almost alone: fits the others anew. */
function leaveOut(xy: Float64Array, frame: Frame, left: number, out: Results): void {
  const others = new Float64Array(xy.length - 2);
  others.set(xy.subarray(0, 2 * left));
  others.set(xy.subarray(2 * left + 2), 2 * left);
  const { centroid, direction, rms } = fitLine(others);
  const count = frame.count - 1;
  // the way of the fitted line, not the other way round
  const way = direction[0] * frame.ux + direction[1] * frame.uy < 0 ? -1 : 1;
  const [c, s] = [way * direction[0], way * direction[1]];
  const dx = at(xy, 2 * left) - centroid[0];
  const dy = at(xy, 2 * left + 1) - centroid[1];
  const [station, offset] = [c * dx + s * dy, c * dy - s * dx + 0];
  const scatter = Math.max(rms * Math.sqrt(count / (count - 2)), frame.finest);
  const moments = momentsOf(others);
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
