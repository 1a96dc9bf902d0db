import { fault } from '../errors.js';

/** An orthogonal least-squares line, in metres. */
export interface LineFit {
  readonly centroid: readonly [number, number];
  /** Unit vector along the line, toward the last point. */
  readonly direction: readonly [number, number];
  /** Root mean square of the residuals. */
  readonly rms: number;
  /** Signed distance of each point from the line, + left of the direction. */
  readonly residuals: Float64Array;
}

/**
 * Fits a straight line to points by orthogonal least squares: the distance square to the line is
 * least, so that lines in any direction, due north too, fit alike. Sums are taken about the centroid:
 * at coordinates of 500 000 / 4 500 000 m the residuals hold to a nanometre.
 *
 * Formula: with `a = sum dx^2`, `b = sum dx dy`, `c = sum dy^2` about the centroid, the direction is
 * the eigenvector of `[[a, b], [b, c]]` with the larger eigenvalue.
 *
 * @param points - at least 2 points [metres], as `[x, y]` pairs or as a flat `Float64Array`
 *   `x0, y0, x1, y1 ...`; not changed
 * @returns centroid, unit direction, rms and residuals [metres]
 * @throws `TOO_FEW_POINTS`, `NOT_FINITE`, `POINTS_COINCIDE`, `DIRECTION_UNDEFINED`
 * @source derived
 * @example
 * const { direction, rms } = fitLine([[0, 0], [0, 5], [0, 10]]);
 * direction[1] //=> 1
 * rms //=> 0
 */
export function fitLine(points: readonly (readonly [number, number])[] | Float64Array): LineFit {
  const xy = points instanceof Float64Array ? points : flatten(points);
  const count = xy.length >> 1;
  if (count < 2 || xy.length % 2 !== 0) {
    throw fault('TOO_FEW_POINTS', 'a line needs two points or more, each with x and y');
  }
  const [x0, y0] = [at(xy, 0), at(xy, 1)];
  const [meanX, meanY] = meanAbout(xy, x0, y0);
  const { a, b, c } = momentsAbout(xy, x0, y0, meanX, meanY);
  const [ux, uy] = mainDirection(a, b, c);
  const last = xy.length - 2;
  const ahead = (at(xy, last) - x0) * ux + (at(xy, last + 1) - y0) * uy >= 0 ? 1 : -1;
  const [dx, dy] = [ux * ahead + 0, uy * ahead + 0];
  const residuals = new Float64Array(count);
  let squares = 0;
  for (let i = 0; i < count; i += 1) {
    const px = at(xy, 2 * i) - x0 - meanX;
    const py = at(xy, 2 * i + 1) - y0 - meanY;
    const residual = dx * py - dy * px;
    residuals[i] = residual;
    squares += residual * residual;
  }
  return Object.freeze({
    centroid: Object.freeze([x0 + meanX, y0 + meanY] as const),
    direction: Object.freeze([dx, dy] as const),
    rms: Math.sqrt(squares / count),
    residuals,
  });
}

function flatten(points: readonly (readonly [number, number])[]): Float64Array {
  if (!Array.isArray(points)) throw fault('WRONG_TYPE', 'expected a list of [x, y] points');
  const xy = new Float64Array(2 * points.length);
  points.forEach((point: unknown, i) => {
    if (!isPoint(point)) {
      throw fault('WRONG_TYPE', 'expected a point [x, y]', {}, [i]);
    }
    xy[2 * i] = point[0];
    xy[2 * i + 1] = point[1];
  });
  return xy;
}

const isPoint = (point: unknown): point is readonly [number, number] =>
  Array.isArray(point) && typeof point[0] === 'number' && typeof point[1] === 'number';

const at = (xy: Float64Array, index: number): number => xy[index] ?? Number.NaN;

function meanAbout(xy: Float64Array, x0: number, y0: number): readonly [number, number] {
  let [sumX, sumY] = [0, 0];
  for (let i = 0; i < xy.length; i += 2) {
    sumX += at(xy, i) - x0;
    sumY += at(xy, i + 1) - y0;
  }
  if (!Number.isFinite(sumX) || !Number.isFinite(sumY)) {
    throw fault('NOT_FINITE', 'every coordinate must be a finite number');
  }
  const count = xy.length / 2;
  return [sumX / count, sumY / count];
}

function momentsAbout(xy: Float64Array, x0: number, y0: number, meanX: number, meanY: number) {
  let [a, b, c] = [0, 0, 0];
  for (let i = 0; i < xy.length; i += 2) {
    const px = at(xy, i) - x0 - meanX;
    const py = at(xy, i + 1) - y0 - meanY;
    a += px * px;
    b += px * py;
    c += py * py;
  }
  return { a, b, c };
}

/** Unit eigenvector of the larger eigenvalue, without trigonometry and without cancellation. */
function mainDirection(a: number, b: number, c: number): readonly [number, number] {
  if (a + c === 0) throw fault('POINTS_COINCIDE', 'all points are the same point');
  const spread = Math.hypot(a - c, 2 * b);
  if (!(spread > 1e-14 * (a + c))) {
    throw fault('DIRECTION_UNDEFINED', 'the points spread alike in every direction');
  }
  const [x, y] = a >= c ? [spread + (a - c), 2 * b] : [2 * b, spread + (c - a)];
  const norm = Math.hypot(x, y);
  return [x / norm, y / norm];
}
