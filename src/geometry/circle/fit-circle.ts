import { fault, type SettlineError } from '../../errors.js';
import { firstCircle, frameOf, settle, type Fitted, type Sample } from './circle-steps.js';
import { flatPoints, MOST_SPREAD, unusable, type BulkPoints } from '../bulk-points.js';
import { at } from '../floats.js';
import { residualsFor, type ResidualOptions } from '../residuals.js';

/** A least-squares circle, in metres. */
export interface CircleFit {
  /** Centre of the circle, x and y [metres]. */
  readonly centre: readonly [number, number];
  /** Radius [metres]. */
  readonly radius: number;
  /** Root mean square of the residuals [metres]. */
  readonly rms: number;
  /** Distance of each point from the circle [metres], + outside. */
  readonly residuals: Float64Array;
  /**
   * Standard uncertainty of the radius [metres], from the residuals. It is 0 for three points, which
   * have no residuals. If it is not small beside the radius, the arc is too flat to give a radius.
   */
  readonly radiusUncertainty: number;
}

/** Points farther apart [metres] overflow the sums. */
const MOST_EXTENT = 1e50;
/** Number of points that is enough to start on. */
const FEW = 2000;

/**
 * Fits a circle to points by geometric least squares. It minimizes the sum of the squared distances
 * from the circle, not of the errors of an equation, which makes short arcs too small. Sums are taken
 * about the first point, so at 500 000 / 4 500 000 m the circle is good to a nanometre, or as good as
 * the points allow.
 *
 * Formula: residual `d = |P - C| - R`; `sum d^2` is minimized by Gauss-Newton steps for the curvature,
 * the middle of the arc and its turn, until the distances change by less than 1e-13 of the extent. The
 * first steps use a sample of the points.
 *
 * @param points - at least 3 points [metres], as `[x, y]` pairs or as a flat `Float64Array`
 *   `x0, y0, x1, y1 ...`; not changed
 * @returns centre, radius, rms, residuals [metres, + outside] and uncertainty of the radius [metres]
 * @throws `TOO_FEW`, `WRONG_TYPE`, `NOT_FINITE`, `OUT_OF_RANGE`, `POINTS_COINCIDE`,
 *   `POINTS_COLLINEAR`, `UNKNOWN_FIELD`
 * @source derived
 * @example
 * const { centre, radius } = fitCircle([[8, 0], [5, 3], [2, 0], [5, -3]]);
 * centre.map((metres) => metres.toFixed(9)) //=> ['5.000000000', '0.000000000']
 * radius.toFixed(9) //=> '3.000000000'
 */
export function fitCircle(points: BulkPoints, options?: ResidualOptions): CircleFit {
  const xy = flatPoints(points, { least: 3, words: 'a circle needs three points or more' });
  const count = xy.length / 2;
  const { circle, radiusVariance } = nearestCircle(xy);
  const x0 = at(xy, 0);
  const y0 = at(xy, 1);
  const residuals = residualsFor(count, options);
  let squares = 0;
  for (let i = 0; i < count; i += 1) {
    const dx = at(xy, 2 * i) - x0 - circle.x;
    const dy = at(xy, 2 * i + 1) - y0 - circle.y;
    const residual = Math.sqrt(dx * dx + dy * dy) - circle.r;
    residuals[i] = residual;
    squares += residual * residual;
  }
  if (!(squares <= MOST_SPREAD)) throw unusable(xy, 2);
  return Object.freeze({
    // adding nothing turns a negative zero into zero
    centre: Object.freeze([x0 + circle.x + 0, y0 + circle.y + 0] as const),
    radius: circle.r,
    rms: Math.sqrt(squares / count),
    residuals,
    radiusUncertainty: count === 3 ? 0 : Math.sqrt((squares / (count - 3)) * radiusVariance),
  });
}

function nearestCircle(xy: Float64Array): Fitted {
  const every = Math.max(1, Math.floor(xy.length / 2 / FEW));
  const fitted = every === 1 ? undefined : fitFrom({ xy, every }, undefined);
  const settled = fitFrom({ xy, every: 1 }, fitted);
  if (settled === undefined) throw noCircle(xy);
  return settled;
}

function fitFrom(sample: Sample, start: Fitted | undefined): Fitted | undefined {
  const frame = start?.frame ?? frameOf(sample);
  if (!(frame.extent <= MOST_EXTENT)) throw unusable(sample.xy, 2);
  const circle = start?.circle ?? firstCircle(sample, frame);
  return circle && settle(sample, frame, { circle, rate: start?.rate ?? 1 });
}

function noCircle(xy: Float64Array): SettlineError {
  if (xy.some((value) => !Number.isFinite(value))) return unusable(xy, 2);
  const isOne = xy.every((value, i) => value === xy[i % 2]);
  return isOne
    ? fault('POINTS_COINCIDE', 'all points are the same point')
    : fault('POINTS_COLLINEAR', 'the points are in line: no circle goes through them');
}
