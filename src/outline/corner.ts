import {
  compareRatios,
  decimalRatio,
  divideRatios,
  greaterRatio,
  isSmall,
  multiplyRatios,
  negateRatio,
  ratioToDecimal,
  roughNumber,
  roundedQuotient,
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
  turnedRight,
  type Vector,
} from '../units/vector.js';
import { middleOrdinate } from './arc.js';
import { MITRE_LIMIT } from './mitre-limit.js';

/** Shape of the corners of a widened outline. */
export type Corners = 'mitred' | 'round';

/** An edge at one of its ends, about to be moved. Internal. */
export interface Side {
  /** Along the edge, or along its tangent. */
  readonly along: Vector;
  /** Square to `along`, out of the paving, with the same length. */
  readonly outward: Vector;
  readonly distance: Ratio;
  /** Distance times the length of `along`. */
  readonly push: Ratio;
  /** True for the tangent of an arc, or if the push contains a rounded root: 40 digits are enough. */
  readonly isRounded: boolean;
}

/** A corner once its two edges have moved. Internal. */
export interface Corner {
  /** End of the edge before, start of the edge after, and any points between. */
  readonly points: readonly Vector[];
  /** Middle ordinate of the arc of a round corner, and number of the point at which it starts. */
  readonly bulge?: Ratio;
  readonly arcFrom?: number;
  /** True if the paving fills less than half of the circle around the corner. */
  readonly isConvex: boolean;
  /** True for a mitre that reaches beyond {@link MITRE_LIMIT}. */
  readonly isLong: boolean;
}

/** Shape of the corners, and the outer side of the edges. Internal. */
export interface CornerStyle {
  readonly corners: Corners;
  readonly isOutwardRight: boolean;
}

/** Makes a side; nothing is rounded if it does not move. Internal. */
export function sideOf(
  along: Vector,
  distance: Ratio,
  { isOutwardRight, isTangent }: { readonly isOutwardRight: boolean; readonly isTangent: boolean },
): Side {
  const right = turnedRight(along);
  const outward = isOutwardRight ? right : opposite(right);
  if (signOfRatio(distance) === 0) {
    return { along, outward, distance, push: ZERO_RATIO, isRounded: isTangent };
  }
  const size = norm(along);
  const isRounded = isTangent || isRoundedRoot(size);
  return { along, outward, distance, push: multiplyRatios(distance, size), isRounded };
}

/** The point straight out from a point on an edge, after the move. Internal. */
export function moved(point: Vector, { along, outward, push, isRounded }: Side): Vector {
  if (signOfRatio(push) === 0) return point;
  return plus(point, shareOf(outward, push, { of: squared(along), isRounded }));
}

/**
 * The corner between two moved edges. Mitred: the point where they meet, or a step if they are in one
 * line, or almost in one line with different distances. Round: an arc about the old corner, with the
 * larger of the two distances as its radius. The corner moves by the vector m with
 * `m . outward(k) = distance(k) x size(k)` for both edges. Each coordinate is one division, so right
 * angles are exact. Internal.
 */
export function corner(at: Vector, before: Side, after: Side, style: CornerStyle): Corner {
  const turn = cross(before.outward, after.outward);
  const isAhead = signOfRatio(dot(before.outward, after.outward)) > 0;
  const isStraight = signOfRatio(turn) === 0 || areTangent(before, after, roughNumber(turn));
  const isConvex = isStraight || signOfRatio(turn) > 0 === style.isOutwardRight;
  if (isStraight && isAhead) return { points: step(at, before, after), isConvex, isLong: false };
  // arcs may meet at a corner with no angle between them: it is cut off square
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

/** True for tangents in one line, apart from rounding. */
const areTangent = (before: Side, after: Side, turn: number): boolean =>
  (before.isRounded || after.isRounded) &&
  Math.abs(turn) <
    1e-20 * Math.sqrt(roughNumber(squared(before.along)) * roughNumber(squared(after.along)));

/** The vector from the old corner to the point where the moved edges meet. */
function mitre(before: Side, after: Side, turn: Ratio): Vector {
  // (k1 n2 - k2 n1) rotated by a right angle, over the turn
  const along = minus(scaled(after.outward, before.push), scaled(before.outward, after.push));
  const part = quotientIn(before.isRounded || after.isRounded);
  return { x: part(along.y, turn), y: part(negateRatio(along.x), turn) };
}

/** Division that keeps 40 digits if the value contains a rounded root: more only cost time. */
const quotientIn = (isRounded: boolean) => (isRounded ? roundedQuotient : divideRatios);

/** `v k / of`, to 40 digits if it contains a rounded root. */
function shareOf(
  v: Vector,
  k: Ratio,
  { of, isRounded }: { readonly of: Ratio; readonly isRounded: boolean },
): Vector {
  const part = quotientIn(isRounded);
  return { x: part(multiplyRatios(v.x, k), of), y: part(multiplyRatios(v.y, k), of) };
}

/** Rounds a vector that contains a rounded root to 40 digits: more only cost time. Internal. */
export function settled(v: Vector, isRounded: boolean): Vector {
  return isRounded ? { x: to40Digits(v.x), y: to40Digits(v.y) } : v;
}

/** A value to 40 digits, if it has more. Internal. */
export const to40Digits = (a: Ratio): Ratio => (isSmall(a) ? a : decimalRatio(ratioToDecimal(a)));

function isFar({ x, y }: Vector, before: Side, after: Side): boolean {
  const [rx, ry] = [roughNumber(x), roughNumber(y)];
  const distances = [before, after].map(({ distance }) => Math.abs(roughNumber(distance)));
  const most = MITRE_LIMIT * Math.max(...distances);
  return rx * rx + ry * ry > most * most;
}

/** Points straight out from the end of one edge and the start of the next: one if they agree. */
function step(at: Vector, before: Side, after: Side): Vector[] {
  const start = moved(at, after);
  return compareRatios(before.distance, after.distance) === 0
    ? [start]
    : [moved(at, before), start];
}

/** An arc about the old corner, between two edges that reach it; undefined if a mitre is needed. */
function roundCorner(at: Vector, before: Side, after: Side, reach: Vector): Corner | undefined {
  const order = compareRatios(before.distance, after.distance);
  const radius = greaterRatio(before.distance, after.distance);
  if (signOfRatio(radius) <= 0) return undefined;
  const isAhead = signOfRatio(dot(reach, before.along)) > 0;
  const isBehind = signOfRatio(dot(reach, after.along)) < 0;
  if ((order >= 0 && !isAhead) || (order <= 0 && !isBehind)) return undefined;
  const from = order < 0 ? beyond(at, before, radius) : moved(at, before);
  const to = order > 0 ? beyond(at, after, negateRatio(radius)) : moved(at, after);
  const bulge = middleOrdinate(at, radius, from, to);
  return { points: [from, to], bulge, arcFrom: 0, isConvex: true, isLong: false };
}

/** The point where the circle about a corner meets a moved edge: ahead, or back if the radius is negative. */
function beyond(at: Vector, side: Side, radius: Ratio): Vector {
  const leg = squareRoot(
    subtractRatios(multiplyRatios(radius, radius), multiplyRatios(side.distance, side.distance)),
  );
  const signed = signOfRatio(radius) < 0 ? negateRatio(leg) : leg;
  return plus(moved(at, side), settled(share(side.along, signed, norm(side.along)), true));
}
