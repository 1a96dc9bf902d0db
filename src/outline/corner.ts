import {
  compareRatios,
  divideRatios,
  multiplyRatios,
  negateRatio,
  ratioToNumber,
  signOfRatio,
  subtractRatios,
  wholeRatio,
  type Ratio,
} from '../units/ratio.js';
import { squareRoot } from '../units/root.js';
import {
  cross,
  dot,
  minus,
  norm,
  plus,
  scaled,
  share,
  squared,
  type Vector,
} from '../units/vector.js';
import { middleOrdinate } from './arc.js';
import { MITRE_LIMIT } from './mitre-limit.js';

/** How the corners of a widened outline are made. */
export type Corners = 'mitred' | 'round';

/** An edge at one of its ends, about to be moved. Internal. */
export interface Side {
  /** Along the edge, or along its tangent. */
  readonly along: Vector;
  /** Square to that, out of the paving, of the same length. */
  readonly outward: Vector;
  readonly size: Ratio;
  readonly distance: Ratio;
}

/** A corner once its two edges have moved. Internal. */
export interface Corner {
  /** Where the edge before ends, where the edge after starts, and what lies between. */
  readonly points: readonly Vector[];
  /** Middle ordinate of the arc from the first point to the second, in a round corner. */
  readonly bulge?: Ratio;
  /** True where the paving takes up less than half of the ground about the corner. */
  readonly isConvex: boolean;
}

/** The place straight out from a point of an edge, once the edge has moved. Internal. */
export const moved = (point: Vector, { outward, distance, size }: Side): Vector =>
  plus(point, share(outward, distance, size));

/**
 * The corner between two moved edges. Mitred: where they meet, cut off at {@link MITRE_LIMIT}; a step
 * if they run in one line. Round: an arc about the old corner, with the larger of the two distances
 * for its radius. The corner moves by the vector m with `m . outward(k) = distance(k) x size(k)` for
 * both edges; each coordinate is one division, so that right angles come out exact. Internal.
 */
export function corner(at: Vector, before: Side, after: Side, style: CornerStyle): Corner {
  const turn = cross(before.outward, after.outward);
  const isStraight = signOfRatio(turn) === 0;
  const isConvex = isStraight || signOfRatio(turn) > 0 === style.isOutwardRight;
  if (isStraight) return { points: step(at, before, after), isConvex };
  const reach = mitre(before, after, turn);
  if (isConvex && style.corners === 'round') {
    const round = roundCorner(at, before, after, reach);
    if (round !== undefined) return round;
  }
  if (!isFar(reach, before, after)) return { points: [plus(at, reach)], isConvex };
  if (signOfRatio(dot(before.outward, after.outward)) > 0) {
    return { points: step(at, before, after), isConvex };
  }
  const points = isConvex ? cutOff(at, before, after, reach) : [plus(at, reach)];
  return { points, isConvex };
}

/** How corners are made, and on which side of the edges the outside is. Internal. */
export interface CornerStyle {
  readonly corners: Corners;
  readonly isOutwardRight: boolean;
}

/** From the old corner to the place where the moved edges meet. */
function mitre(before: Side, after: Side, turn: Ratio): Vector {
  const k1 = multiplyRatios(before.distance, before.size);
  const k2 = multiplyRatios(after.distance, after.size);
  // (k1 n2 - k2 n1) turned by a right angle, over the turn
  const along = minus(scaled(after.outward, k1), scaled(before.outward, k2));
  return { x: divideRatios(along.y, turn), y: divideRatios(negateRatio(along.x), turn) };
}

const larger = (a: Ratio, b: Ratio): Ratio => (compareRatios(a, b) < 0 ? b : a);

function isFar(reach: Vector, before: Side, after: Side): boolean {
  const [x, y] = [ratioToNumber(reach.x), ratioToNumber(reach.y)];
  const most = MITRE_LIMIT * ratioToNumber(larger(before.distance, after.distance));
  const excess = x * x + y * y - most * most;
  // floats decide, but for what is within their rounding
  if (Math.abs(excess) > 1e-9 * most * most) return excess > 0;
  const limit = multiplyRatios(larger(before.distance, after.distance), wholeRatio(MITRE_LIMIT));
  return compareRatios(squared(reach), multiplyRatios(limit, limit)) > 0;
}

/** Straight out from the end of one edge and from the start of the next: one point if they agree. */
function step(at: Vector, before: Side, after: Side): Vector[] {
  const [end, start] = [moved(at, before), moved(at, after)];
  return compareRatios(before.distance, after.distance) === 0 ? [start] : [end, start];
}

/** A sharp mitre, cut off square to its length. */
function cutOff(at: Vector, before: Side, after: Side, reach: Vector): Vector[] {
  const size = norm(reach);
  const limit = multiplyRatios(larger(before.distance, after.distance), wholeRatio(MITRE_LIMIT));
  const back = multiplyRatios(subtractRatios(size, limit), size);
  const tip = plus(at, reach);
  const cut = ({ along }: Side) => minus(tip, share(along, back, dot(along, reach)));
  return [cut(before), cut(after)];
}

/** An arc about the old corner, between two edges that reach it; else none, and a mitre serves. */
function roundCorner(at: Vector, before: Side, after: Side, reach: Vector): Corner | undefined {
  const order = compareRatios(before.distance, after.distance);
  const radius = larger(before.distance, after.distance);
  if (signOfRatio(radius) === 0) return undefined;
  const isAhead = signOfRatio(dot(reach, before.along)) > 0;
  const isBehind = signOfRatio(dot(reach, after.along)) < 0;
  if ((order >= 0 && !isAhead) || (order <= 0 && !isBehind)) return undefined;
  const beyond = (side: Side) => share(side.along, leg(radius, side.distance), side.size);
  const from = order < 0 ? plus(moved(at, before), beyond(before)) : moved(at, before);
  const to = order > 0 ? minus(moved(at, after), beyond(after)) : moved(at, after);
  return { points: [from, to], bulge: middleOrdinate(at, radius, from, to), isConvex: true };
}

/** The other leg of a right-angled triangle. */
const leg = (long: Ratio, short: Ratio): Ratio =>
  squareRoot(subtractRatios(multiplyRatios(long, long), multiplyRatios(short, short)));
