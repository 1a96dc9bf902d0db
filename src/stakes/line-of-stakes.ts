import {
  addRatios,
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
 * A straight line in plan: a point and a vector along it with its size. The vector is not brought to
 * unit length, so that an offset is one division and comes out exact where it can. Internal.
 */
export interface PlanLine {
  readonly point: Vector;
  readonly along: Vector;
  readonly size: Ratio;
}

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

/** The line from one point to another; undefined where they coincide. */
export function lineThrough(from: Vector, to: Vector): PlanLine | undefined {
  return lineAlong(from, minus(to, from));
}

function lineAlong(point: Vector, along: Vector): PlanLine | undefined {
  const size = norm(along);
  return signOfRatio(size) === 0 ? undefined : { point, along, size };
}

/**
 * The orthogonal least-squares line, directed from the first point to the last; undefined where the
 * points have no main direction. Exact but for one root.
 */
export function bestLine(points: readonly Vector[]): PlanLine | undefined {
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined) return undefined;
  const count = wholeRatio(points.length);
  const sum = points.reduce(plus);
  const mean = { x: divideRatios(sum.x, count), y: divideRatios(sum.y, count) };
  let [a, b, c]: [Ratio, Ratio, Ratio] = [ZERO_RATIO, ZERO_RATIO, ZERO_RATIO];
  for (const point of points) {
    // n times the distance from the mean: no thirds, and the direction is the same
    const d = {
      x: subtractRatios(multiplyRatios(point.x, count), sum.x),
      y: subtractRatios(multiplyRatios(point.y, count), sum.y),
    };
    a = addRatios(a, multiplyRatios(d.x, d.x));
    b = addRatios(b, multiplyRatios(d.x, d.y));
    c = addRatios(c, multiplyRatios(d.y, d.y));
  }
  const along = mainDirection(a, b, c);
  const isBackward = signOfRatio(dot(along, minus(last, first))) < 0;
  return lineAlong(mean, isBackward ? opposite(along) : along);
}

/** Eigenvector of `[[a, b], [b, c]]` with the larger eigenvalue; zero where there is none. */
function mainDirection(a: Ratio, b: Ratio, c: Ratio): Vector {
  const difference = subtractRatios(a, c);
  const twice = addRatios(b, b);
  const spread = norm({ x: difference, y: twice });
  return signOfRatio(difference) < 0
    ? { x: twice, y: addRatios(spread, negateRatio(difference)) }
    : { x: addRatios(spread, difference), y: twice };
}
