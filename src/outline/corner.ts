import {
  compareRatios,
  decimalRatio,
  divideRatios,
  isSmall,
  multiplyRatios,
  negateRatio,
  ratioToDecimal,
  roughNumber,
  signOfRatio,
  subtractRatios,
  ZERO_RATIO,
  type Ratio,
} from '../units/ratio.js';
import { isRoundedRoot, squareRoot } from '../units/root.js';
import {
  cross,
  dot,
  minus,
  norm,
  opposite,
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
  readonly distance: Ratio;
  /** Distance times the length of `along`. */
  readonly push: Ratio;
  /** True for the tangent of an arc and where the push holds a rounded root: 40 digits, no more. */
  readonly isRounded: boolean;
}

/** A corner once its two edges have moved. Internal. */
export interface Corner {
  /** Where the edge before ends, where the edge after starts, and what lies between. */
  readonly points: readonly Vector[];
  /** Middle ordinate of the arc of a round corner, and the point from which it runs to the next. */
  readonly bulge?: Ratio;
  readonly arcFrom?: number;
  /** True where the paving takes up less than half of the ground about the corner. */
  readonly isConvex: boolean;
  /** True for a mitre that reaches beyond {@link MITRE_LIMIT}. */
  readonly isLong: boolean;
}

/** How corners are made, and on which side of the edges the outside is. Internal. */
export interface CornerStyle {
  readonly corners: Corners;
  readonly isOutwardRight: boolean;
}

/** Makes a side; nothing is rounded where it does not move. Internal. */
export function sideOf(
  along: Vector,
  distance: Ratio,
  { isOutwardRight, isTangent }: { readonly isOutwardRight: boolean; readonly isTangent: boolean },
): Side {
  const right = { x: along.y, y: negateRatio(along.x) };
  const outward = isOutwardRight ? right : opposite(right);
  if (signOfRatio(distance) === 0) {
    return { along, outward, distance, push: ZERO_RATIO, isRounded: isTangent };
  }
  const size = norm(along);
  const isRounded = isTangent || isRoundedRoot(size);
  return { along, outward, distance, push: multiplyRatios(distance, size), isRounded };
}

/** The place straight out from a point of an edge, once the edge has moved. Internal. */
export function moved(point: Vector, { along, outward, push, isRounded }: Side): Vector {
  if (signOfRatio(push) === 0) return point;
  return plus(point, settled(share(outward, push, squared(along)), isRounded));
}

/**
 * The corner between two moved edges. Mitred: where they meet; a step if they run in one line, or
 * almost so and move by different distances. Round: an arc about the old corner, with the larger of
 * the two distances for its radius. The corner moves by the vector m with
 * `m . outward(k) = distance(k) x size(k)` for both edges; each coordinate is one division, so that
 * right angles come out exact. Internal.
 */
export function corner(at: Vector, before: Side, after: Side, style: CornerStyle): Corner {
  const turn = cross(before.outward, after.outward);
  const isAhead = signOfRatio(dot(before.outward, after.outward)) > 0;
  const isStraight = signOfRatio(turn) === 0 || areTangent(before, after, roughNumber(turn));
  const isConvex = isStraight || signOfRatio(turn) > 0 === style.isOutwardRight;
  if (isStraight && isAhead) return { points: step(at, before, after), isConvex, isLong: false };
  // arcs may run into a corner with no angle at all: it is cut off square
  if (isStraight) return { points: [moved(at, before), moved(at, after)], isConvex, isLong: true };
  const reach = mitre(before, after, turn);
  if (isConvex && style.corners === 'round') {
    const round = roundCorner(at, before, after, reach);
    if (round !== undefined) return round;
  }
  const isLong = isFar(reach, before, after);
  if (isLong && isAhead) return { points: step(at, before, after), isConvex, isLong: false };
  return { points: [plus(at, reach)], isConvex, isLong };
}

/** Tangents in one line but for their rounding. */
const areTangent = (before: Side, after: Side, turn: number): boolean =>
  (before.isRounded || after.isRounded) &&
  Math.abs(turn) <
    1e-20 * Math.sqrt(roughNumber(squared(before.along)) * roughNumber(squared(after.along)));

/** From the old corner to the place where the moved edges meet. */
function mitre(before: Side, after: Side, turn: Ratio): Vector {
  // (k1 n2 - k2 n1) turned by a right angle, over the turn
  const along = minus(scaled(after.outward, before.push), scaled(before.outward, after.push));
  const reach = { x: divideRatios(along.y, turn), y: divideRatios(negateRatio(along.x), turn) };
  return settled(reach, before.isRounded || after.isRounded);
}

/** What holds a rounded root is kept to 40 digits: more would only cost time. Internal. */
export function settled(v: Vector, isRounded: boolean): Vector {
  return isRounded ? { x: to40Digits(v.x), y: to40Digits(v.y) } : v;
}

const to40Digits = (a: Ratio): Ratio => (isSmall(a) ? a : decimalRatio(ratioToDecimal(a)));

const larger = (a: Ratio, b: Ratio): Ratio => (compareRatios(a, b) < 0 ? b : a);

function isFar({ x, y }: Vector, before: Side, after: Side): boolean {
  const [rx, ry] = [roughNumber(x), roughNumber(y)];
  const distances = [before, after].map(({ distance }) => Math.abs(roughNumber(distance)));
  const most = MITRE_LIMIT * Math.max(...distances);
  return rx * rx + ry * ry > most * most;
}

/** Straight out from the end of one edge and from the start of the next: one point if they agree. */
function step(at: Vector, before: Side, after: Side): Vector[] {
  const start = moved(at, after);
  return compareRatios(before.distance, after.distance) === 0
    ? [start]
    : [moved(at, before), start];
}

/** An arc about the old corner, between two edges that reach it; else none, and a mitre serves. */
function roundCorner(at: Vector, before: Side, after: Side, reach: Vector): Corner | undefined {
  const order = compareRatios(before.distance, after.distance);
  const radius = larger(before.distance, after.distance);
  if (signOfRatio(radius) <= 0) return undefined;
  const isAhead = signOfRatio(dot(reach, before.along)) > 0;
  const isBehind = signOfRatio(dot(reach, after.along)) < 0;
  if ((order >= 0 && !isAhead) || (order <= 0 && !isBehind)) return undefined;
  const from = order < 0 ? beyond(at, before, radius) : moved(at, before);
  const to = order > 0 ? beyond(at, after, negateRatio(radius)) : moved(at, after);
  const bulge = middleOrdinate(at, radius, from, to);
  return { points: [from, to], bulge, arcFrom: 0, isConvex: true, isLong: false };
}

/** Where the circle about a corner meets a moved edge that it reaches over, ahead or (radius negative) back. */
function beyond(at: Vector, side: Side, radius: Ratio): Vector {
  const leg = squareRoot(
    subtractRatios(multiplyRatios(radius, radius), multiplyRatios(side.distance, side.distance)),
  );
  const signed = signOfRatio(radius) < 0 ? negateRatio(leg) : leg;
  return plus(moved(at, side), settled(share(side.along, signed, norm(side.along)), true));
}
