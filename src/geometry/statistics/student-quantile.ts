import { fault } from '../../errors.js';
import { readNumber, readOptions } from '../read-options.js';

/** Tail and degrees of freedom of Student's t. */
export interface StudentQuantileOptions {
  /** Upper-tail probability, from 1e-100 up to less than 1. */
  readonly tail: number;
  /** Degrees of freedom, a whole number from 1 to 10 000 000. */
  readonly degreesOfFreedom: number;
}

/**
 * The value that Student's t exceeds with a given probability: it solves `P(T > t) = tail`. Tails are
 * worked out directly, not as 1 less the rest, so the small tails of a long row of stakes are good to
 * 12 digits. With more degrees of freedom the value approaches that of the normal distribution.
 *
 * Formula: `P(T > t) = I(x; df/2, 1/2) / 2` with `x = df / (df + t^2)`. The incomplete beta function
 * comes from its continued fraction (handbook formulas 26.5.8, 26.7.1); Newton steps solve for t.
 *
 * @returns t, negative for a tail of more than one half
 * @throws `OUT_OF_RANGE`, `REQUIRED`, `WRONG_TYPE`, `NOT_FINITE`, `UNKNOWN_FIELD`
 * @source handbook-functions
 * @example
 * studentQuantile({ tail: 0.025, degreesOfFreedom: 10 }).toFixed(3) //=> '2.228'
 */
export function studentQuantile(options: StudentQuantileOptions): number {
  const fields = readOptions(options, ['tail', 'degreesOfFreedom']);
  const tail = readNumber(fields['tail'], ['tail']);
  const df = readNumber(fields['degreesOfFreedom'], ['degreesOfFreedom']);
  if (!(tail >= LEAST_TAIL && tail < 1)) {
    throw fault('OUT_OF_RANGE', 'a tail is a probability, from 1e-100 up to less than 1', {}, [
      'tail',
    ]);
  }
  if (!(Number.isInteger(df) && df >= 1 && df <= MOST_DEGREES)) {
    const message = `degrees of freedom are a whole number from 1 to ${MOST_DEGREES}`;
    throw fault('OUT_OF_RANGE', message, {}, ['degreesOfFreedom']);
  }
  if (tail === 0.5) return 0;
  return tail < 0.5 ? solveTail(tail, df) : -solveTail(1 - tail, df);
}

/** For smaller tails t overflows at one degree of freedom. Internal. */
export const LEAST_TAIL = 1e-100;
/** The largest number of degrees of freedom. Internal. */
export const MOST_DEGREES = 10_000_000;

/** Newton steps for the logarithm of t: the logarithm of the tail is almost straight in it. */
function solveTail(tail: number, df: number): number {
  let low = 0;
  let high = 1;
  while (upperTail(high, df) > tail) {
    low = high;
    high *= 2;
  }
  let t = (low + high) / 2;
  for (let k = 0; k < 200; k += 1) {
    const p = upperTail(t, df);
    if (p > tail) low = t;
    else high = t;
    const newton = t * Math.exp((Math.log(p / tail) * p) / (t * density(t, df)));
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (Math.abs(next - t) <= 1e-15 * t) return next;
    t = next;
  }
  return t;
}

/** P(T > t) for t > 0. */
function upperTail(t: number, df: number): number {
  const a = df / 2;
  const square = t * t;
  const x = df / (df + square);
  // x^a (1 - x)^(1/2) / B(a, 1/2)
  const front =
    (Math.exp(-a * Math.log1p(square / df)) * t * gammaStep(a)) /
    Math.sqrt((df + square) * Math.PI);
  if (x < (a + 1) / (a + 2.5)) return (front * betaFraction(x, a, 0.5)) / (2 * a);
  return 0.5 - front * betaFraction(square / (df + square), 0.5, a);
}

function density(t: number, df: number): number {
  const rest = Math.exp(-((df + 1) / 2) * Math.log1p((t * t) / df));
  return (gammaStep(df / 2) / Math.sqrt(df * Math.PI)) * rest;
}

/** `gamma(a + 1/2) / gamma(a)`: a series for large a, brought down by recurrence for small ones. */
function gammaStep(a: number): number {
  let up = a;
  let factor = 1;
  for (; up < 64; up += 1) factor *= up / (up + 0.5);
  const i = 1 / up;
  const rest = 1 + i * (5 / 8 + i * (-21 / 256 + i * (-399 / 2048 + (i * 869) / 32768)));
  return factor * Math.sqrt(up) * (1 - (i / 8) * (1 - (i / 16) * rest));
}

/** The continued fraction `1 / (1 + d1 / (1 + d2 / ...))` of the incomplete beta function. */
function betaFraction(x: number, a: number, b: number): number {
  let above = 1;
  let below = 0;
  let value = 1;
  for (let m = 0; m < 100_000; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    const before = value;
    for (const d of m === 0 ? [odd] : [even, odd]) {
      below = 1 / (1 + d * below);
      above = 1 + d / above;
      value *= below * above;
    }
    if (Math.abs(value - before) <= 1e-16 * Math.abs(value)) break;
  }
  return 1 / value;
}
