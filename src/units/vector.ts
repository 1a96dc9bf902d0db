import { exactOf, fromSI, type Length } from './quantity.js';
import {
  addRatios,
  divideRatios,
  multiplyRatios,
  negateRatio,
  signOfRatio,
  subtractRatios,
  type Ratio,
} from './ratio.js';
import { squareRoot } from './root.js';

/**
 * A plan vector in metres, for exact geometry of a few hundred points. Sums and products are exact;
 * only roots are taken to 40 digits.
 */
export interface Vector {
  readonly x: Ratio;
  readonly y: Ratio;
}

/** A point in plan, as quantities. */
export interface PlanPoint {
  /** Plan coordinate. */
  readonly x: Length;
  /** Plan coordinate. */
  readonly y: Length;
}

/** Exact difference of two points. */
export const between = (from: PlanPoint, to: PlanPoint): Vector => ({
  x: subtractRatios(exactOf(to.x), exactOf(from.x)),
  y: subtractRatios(exactOf(to.y), exactOf(from.y)),
});

/** The end point of a vector. */
export const pointFrom = (origin: PlanPoint, v: Vector): PlanPoint => ({
  x: origin.x.plus(fromSI('length', v.x)),
  y: origin.y.plus(fromSI('length', v.y)),
});

export const minus = (a: Vector, b: Vector): Vector => ({
  x: subtractRatios(a.x, b.x),
  y: subtractRatios(a.y, b.y),
});
export const plus = (a: Vector, b: Vector): Vector => ({
  x: addRatios(a.x, b.x),
  y: addRatios(a.y, b.y),
});
export const scaled = (a: Vector, k: Ratio): Vector => ({
  x: multiplyRatios(a.x, k),
  y: multiplyRatios(a.y, k),
});
/** `a k / of`, one division per coordinate. */
export const share = (a: Vector, k: Ratio, of: Ratio): Vector => ({
  x: divideRatios(multiplyRatios(a.x, k), of),
  y: divideRatios(multiplyRatios(a.y, k), of),
});
export const opposite = (a: Vector): Vector => ({ x: negateRatio(a.x), y: negateRatio(a.y) });
/** Turned a quarter turn to the right. */
export const turnedRight = ({ x, y }: Vector): Vector => ({ x: y, y: negateRatio(x) });
/** Turned a quarter turn to the left. */
export const turnedLeft = ({ x, y }: Vector): Vector => ({ x: negateRatio(y), y: x });
/** Positive if b points left of a. */
export const cross = (a: Vector, b: Vector): Ratio =>
  subtractRatios(multiplyRatios(a.x, b.y), multiplyRatios(a.y, b.x));
export const dot = (a: Vector, b: Vector): Ratio =>
  addRatios(multiplyRatios(a.x, b.x), multiplyRatios(a.y, b.y));
export const squared = (a: Vector): Ratio => dot(a, a);
export const isZero = (a: Vector): boolean => signOfRatio(a.x) === 0 && signOfRatio(a.y) === 0;

/** Length of a vector; exact for axis-parallel vectors and other perfect squares. */
export function norm(a: Vector): Ratio {
  if (signOfRatio(a.x) === 0) return signOfRatio(a.y) < 0 ? negateRatio(a.y) : a.y;
  if (signOfRatio(a.y) === 0) return signOfRatio(a.x) < 0 ? negateRatio(a.x) : a.x;
  return squareRoot(squared(a));
}
