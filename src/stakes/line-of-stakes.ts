import {
  addRatios,
  compareRatios,
  decimalRatio,
  divideRatios,
  multiplyRatios,
  negateRatio,
  quotientToDecimal,
  signOfRatio,
  subtractRatios,
  wholeRatio,
  ZERO_RATIO,
  type Ratio,
} from '../units/ratio.js';
import { isRoundedRoot } from '../units/root.js';
import { cross, dot, minus, norm, opposite, plus, share, type Vector } from '../units/vector.js';

/**
 * A straight line in plan: a point and a vector along it with its size. The vector is not scaled to
 * unit length: an offset is then a single division, and exact if it can be. Internal.
 */
export interface PlanLine {
  readonly point: Vector;
  readonly along: Vector;
  readonly size: Ratio;
}

const NOWHERE: Vector = Object.freeze({ x: ZERO_RATIO, y: ZERO_RATIO });

/** Signed distance left of the line: `cross(along, p - point) / size`. */
export const offsetFrom = (line: PlanLine, p: Vector): Ratio =>
  overRoot(cross(line.along, minus(p, line.point)), line.size);

/** Distance along the line from its point: `dot(along, p - point) / size`. */
export const stationOn = (line: PlanLine, p: Vector): Ratio =>
  overRoot(dot(line.along, minus(p, line.point)), line.size);

/** `a / size`: exact if the root is, else to the 40 digits that the root has. */
const overRoot = (a: Ratio, size: Ratio): Ratio =>
  isRoundedRoot(size) ? decimalRatio(quotientToDecimal(a, size)) : divideRatios(a, size);

/** The point of the line at a station. */
export const pointAt = (line: PlanLine, station: Ratio): Vector =>
  plus(line.point, share(line.along, station, line.size));

/** The line from one point to another; undefined if they coincide. */
export function lineThrough(from: Vector, to: Vector): PlanLine | undefined {
  return lineAlong(from, minus(to, from));
}

function lineAlong(point: Vector, along: Vector): PlanLine | undefined {
  const size = norm(along);
  return signOfRatio(size) === 0 ? undefined : { point, along, size };
}

/**
 * Exact sums of points, for the line through all of them and the lines that leave one out.
 * Internal.
 */
export interface LineSums {
  readonly count: number;
  readonly sum: Vector;
  readonly xx: Ratio;
  readonly xy: Ratio;
  readonly yy: Ratio;
}

/** Adds points up. Internal. */
export function lineSums(points: readonly Vector[]): LineSums {
  const none = { count: 0, sum: NOWHERE, xx: ZERO_RATIO, xy: ZERO_RATIO, yy: ZERO_RATIO };
  return points.reduce<LineSums>((sums, point) => withPoint(sums, point, addRatios), none);
}

type Change = (a: Ratio, b: Ratio) => Ratio;

const withPoint = (sums: LineSums, { x, y }: Vector, change: Change): LineSums => ({
  count: sums.count + (change === addRatios ? 1 : -1),
  sum: { x: change(sums.sum.x, x), y: change(sums.sum.y, y) },
  xx: change(sums.xx, multiplyRatios(x, x)),
  xy: change(sums.xy, multiplyRatios(x, y)),
  yy: change(sums.yy, multiplyRatios(y, y)),
});

/** The sums without one point. Internal. */
export const sumsWithout = (sums: LineSums, point: Vector): LineSums =>
  withPoint(sums, point, subtractRatios);

/** `n sum p q - sum p sum q`: n times a sum about the mean. Internal. */
export const timesCount = (
  { count }: LineSums,
  products: Ratio,
  [p, q]: readonly [Ratio, Ratio],
): Ratio => subtractRatios(multiplyRatios(wholeRatio(count), products), multiplyRatios(p, q));

/** Sums of squares and products about the mean, n times. */
interface Moments {
  readonly xx: Ratio;
  readonly xy: Ratio;
  readonly yy: Ratio;
}

/** The sums of squares and products about the mean, n times. Internal. */
export function momentsTimesCount(sums: LineSums): Moments {
  const { x, y } = sums.sum;
  return {
    xx: timesCount(sums, sums.xx, [x, x]),
    xy: timesCount(sums, sums.xy, [x, y]),
    yy: timesCount(sums, sums.yy, [y, y]),
  };
}

/** True if the points are exactly in one line. Internal. */
export function areInLine(sums: LineSums): boolean {
  const { xx, xy, yy } = momentsTimesCount(sums);
  return compareRatios(multiplyRatios(xx, yy), multiplyRatios(xy, xy)) === 0;
}

/**
 * The orthogonal least-squares line of points, directed from the first to the last of them;
 * undefined if they have no main direction. Exact but for one root.
 */
export function bestLine(
  sums: LineSums,
  { first, last }: { readonly first: Vector; readonly last: Vector },
): PlanLine | undefined {
  const n = wholeRatio(sums.count);
  const mean = { x: divideRatios(sums.sum.x, n), y: divideRatios(sums.sum.y, n) };
  // n^2 times the sums about the mean: no thirds, and the direction is the same
  const { xx, xy, yy } = momentsTimesCount(sums);
  const along = mainDirection(multiplyRatios(n, xx), multiplyRatios(n, xy), multiplyRatios(n, yy));
  const isBackward = signOfRatio(dot(along, minus(last, first))) < 0;
  return lineAlong(mean, isBackward ? opposite(along) : along);
}

/** Eigenvector of `[[a, b], [b, c]]` with the larger eigenvalue; zero if there is none. */
function mainDirection(a: Ratio, b: Ratio, c: Ratio): Vector {
  const difference = subtractRatios(a, c);
  const twice = addRatios(b, b);
  const spread = norm({ x: difference, y: twice });
  return signOfRatio(difference) < 0
    ? { x: twice, y: addRatios(spread, negateRatio(difference)) }
    : { x: addRatios(spread, difference), y: twice };
}
