import { ZERO, Decimal40, type Decimal } from '../units/decimal.js';
import { cross, dot, minus, norm, plus, scaled, type Vector } from '../units/vector.js';

/**
 * A straight line in plan: a point and a vector along it with its size. The vector is not brought to
 * unit length, so that an offset is one division and comes out exact where it can. Internal.
 */
export interface PlanLine {
  readonly point: Vector;
  readonly along: Vector;
  readonly size: Decimal;
}

/** Signed distance left of the line: `cross(along, p - point) / size`. */
export const offsetFrom = (line: PlanLine, p: Vector): Decimal =>
  cross(line.along, minus(p, line.point)).div(line.size);

/** Distance along the line from its point: `dot(along, p - point) / size`. */
export const stationOn = (line: PlanLine, p: Vector): Decimal =>
  dot(line.along, minus(p, line.point)).div(line.size);

/** The point of the line at a station. */
export const pointAt = (line: PlanLine, station: Decimal): Vector =>
  plus(line.point, scaled(line.along, station.div(line.size)));

/** The line from one point to another; undefined where they coincide. */
export function lineThrough(from: Vector, to: Vector): PlanLine | undefined {
  return lineAlong(from, minus(to, from));
}

function lineAlong(point: Vector, along: Vector): PlanLine | undefined {
  const size = norm(along);
  return size.isZero() ? undefined : { point, along, size };
}

/**
 * The orthogonal least-squares line in 40-digit decimals, directed from the first point to the last;
 * undefined where the points have no main direction.
 */
export function bestLine(points: readonly Vector[]): PlanLine | undefined {
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined) return undefined;
  const sum = points.reduce(plus);
  const count = new Decimal40(points.length);
  const mean = { x: sum.x.div(count), y: sum.y.div(count) };
  let [a, b, c]: [Decimal, Decimal, Decimal] = [ZERO, ZERO, ZERO];
  for (const point of points) {
    const d = minus(point, mean);
    a = a.plus(d.x.times(d.x));
    b = b.plus(d.x.times(d.y));
    c = c.plus(d.y.times(d.y));
  }
  const along = mainDirection(a, b, c);
  const isBackward = dot(along, minus(last, first)).isNegative();
  return lineAlong(mean, isBackward ? scaled(along, -1) : along);
}

/** Eigenvector of `[[a, b], [b, c]]` with the larger eigenvalue; zero where there is none. */
function mainDirection(a: Decimal, b: Decimal, c: Decimal): Vector {
  const difference = a.minus(c);
  const spread = norm({ x: difference, y: b.times(2) });
  return difference.isNegative()
    ? { x: b.times(2), y: spread.minus(difference) }
    : { x: spread.plus(difference), y: b.times(2) };
}
