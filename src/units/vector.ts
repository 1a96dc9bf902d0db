import { Decimal40, type Decimal } from './decimal.js';

/** A plan vector in metres, 40 digits: the ledger's geometry, for a few dozen points. */
export interface Vector {
  readonly x: Decimal;
  readonly y: Decimal;
}

export const minus = (a: Vector, b: Vector): Vector => ({ x: a.x.minus(b.x), y: a.y.minus(b.y) });
export const plus = (a: Vector, b: Vector): Vector => ({ x: a.x.plus(b.x), y: a.y.plus(b.y) });
export const scaled = (a: Vector, k: Decimal | number): Vector => ({
  x: a.x.times(k),
  y: a.y.times(k),
});
/** Positive where b points left of a. */
export const cross = (a: Vector, b: Vector): Decimal => a.x.times(b.y).minus(a.y.times(b.x));
export const dot = (a: Vector, b: Vector): Decimal => a.x.times(b.x).plus(a.y.times(b.y));
export const squared = (a: Vector): Decimal => dot(a, a);
export const isZero = (a: Vector): boolean => a.x.isZero() && a.y.isZero();

/** Length of a vector; exact for axis-parallel vectors and other perfect squares. */
export function norm(a: Vector): Decimal {
  if (a.x.isZero()) return a.y.abs();
  if (a.y.isZero()) return a.x.abs();
  return Decimal40.sqrt(squared(a));
}
