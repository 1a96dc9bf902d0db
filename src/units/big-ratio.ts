import { LARGEST_PLACES, smallDecimal, type SmallDecimal } from './small-decimal.js';
import { bitsOf, commonDivisor, commonDivisorOfFloats, powerOfTen, sizeOf } from './whole.js';

/**
 * A rational too large for two floats, as two whole numbers of any size. Equal values have equal
 * fields, because each value has one form: over the lowest power of ten if its digits end, else in
 * lowest terms. Internal.
 */
export interface BigRatio {
  /** The upper number, of either sign. */
  readonly n: bigint;
  /** The lower number, more than 0. */
  readonly d: bigint;
  /** Decimal places if the digits end (d is ten to that power), else -1. */
  readonly places: number;
}

/**
 * An exact rational. A value whose digits end and fit is two whole floats over a power of ten. Any
 * other, such as a third of an inch or a pound per cubic foot, is two whole numbers of any size.
 * Arithmetic switches between the two and never rounds.
 */
export type Ratio = SmallDecimal | BigRatio;

/** True for a value kept in floats. */
export const isSmall = (a: Ratio): a is SmallDecimal => typeof a.n === 'number';

/** True for a value whose decimal digits end. Internal. */
export const hasEnd = (a: Ratio): boolean => isSmall(a) || a.places >= 0;

/** Zero. */
export const ZERO_RATIO: SmallDecimal = Object.freeze({ n: 0, d: 1 });

const MOST = BigInt(Number.MAX_SAFE_INTEGER);

/** `n / 10^places`. Internal. */
export function decimalOf(n: bigint, places: number): Ratio {
  if (n === 0n) return ZERO_RATIO;
  let digits = n;
  let left = places;
  while (left > 0 && digits % 10n === 0n) {
    digits /= 10n;
    left -= 1;
  }
  if (left <= LARGEST_PLACES && digits <= MOST && digits >= -MOST) {
    return smallDecimal(Number(digits), Number(powerOfTen(left)));
  }
  return { n: digits, d: powerOfTen(left), places: left };
}

/** `n / d`; d is not zero. Internal. */
export function fractionOf(n: bigint, d: bigint): Ratio {
  const common = commonDivisor(sizeOf(d), sizeOf(n));
  return reducedOf(d < 0n ? -n / common : n / common, sizeOf(d) / common);
}

/** `n / d` in lowest terms, d being positive: over a power of ten if the digits end. */
function reducedOf(n: bigint, d: bigint): Ratio {
  if (d === 1n) return decimalOf(n, 0);
  // a third never ends: most fractions of a site have feet in them, and are told by it
  if (d % 3n === 0n) return { n, d, places: -1 };
  // a number has no more factors of two or five than binary digits
  const power = powerOfTen(bitsOf(d));
  if (power % d !== 0n) return { n, d, places: -1 };
  return decimalOf(n * (power / d), bitsOf(d));
}

interface Terms {
  readonly n: bigint;
  readonly d: bigint;
}

/** A value as two whole numbers, over a power of ten if the digits end. Internal. */
export const widened = (a: Ratio): Terms => (isSmall(a) ? { n: BigInt(a.n), d: BigInt(a.d) } : a);

/** A value in lowest terms. Internal. */
export function termsOf(a: Ratio): Terms {
  if (isSmall(a)) {
    const common = commonDivisorOfFloats(a.d, Math.abs(a.n));
    return { n: BigInt(a.n / common), d: BigInt(a.d / common) };
  }
  if (a.places <= 0) return a;
  const common = commonDivisor(a.d, sizeOf(a.n));
  return { n: a.n / common, d: a.d / common };
}

const upper = (a: Ratio): bigint => (isSmall(a) ? BigInt(a.n) : a.n);

/** Exponent of a power of ten up to 1e15. */
const placesOf = (a: Ratio): number => (isSmall(a) ? Math.round(Math.log10(a.d)) : a.places);

/** `a + b`. Internal. */
export function addBig(a: Ratio, b: Ratio): Ratio {
  if (hasEnd(a) && hasEnd(b)) return addDecimals(a, b);
  const x = termsOf(a);
  const y = termsOf(b);
  const common = commonDivisor(x.d, y.d);
  if (common === 1n) return { n: x.n * y.d + y.n * x.d, d: x.d * y.d, places: -1 };
  const part = x.d / common;
  const sum = x.n * (y.d / common) + y.n * part;
  const spare = commonDivisor(common, sizeOf(sum));
  const n = sum / spare;
  const d = part * (y.d / spare);
  // a value that ends plus one that does not never ends
  return hasEnd(a) || hasEnd(b) ? { n, d, places: -1 } : reducedOf(n, d);
}

function addDecimals(a: Ratio, b: Ratio): Ratio {
  const more = placesOf(a) - placesOf(b);
  if (more < 0) return addDecimals(b, a);
  const addend = more === 0 ? upper(b) : upper(b) * powerOfTen(more);
  return decimalOf(upper(a) + addend, placesOf(a));
}

/** `a x b`. Internal. */
export function multiplyBig(a: Ratio, b: Ratio): Ratio {
  if (hasEnd(a) && hasEnd(b)) return decimalOf(upper(a) * upper(b), placesOf(a) + placesOf(b));
  return productOf(termsOf(a), termsOf(b));
}

/** `a / b`; b is not zero. Internal. */
export function divideBig(a: Ratio, b: Ratio): Ratio {
  const { n, d } = termsOf(b);
  return productOf(termsOf(a), n < 0n ? { n: -d, d: -n } : { n: d, d: n });
}

/** The product of two values in lowest terms. */
function productOf(x: Terms, y: Terms): Ratio {
  const first = commonDivisor(y.d, sizeOf(x.n));
  const second = commonDivisor(x.d, sizeOf(y.n));
  return reducedOf((x.n / first) * (y.n / second), (x.d / second) * (y.d / first));
}

/** -1, 0 or 1 as a is less than, equal to or more than b. Internal. */
export function compareBig(a: Ratio, b: Ratio): -1 | 0 | 1 {
  const x = widened(a);
  const y = widened(b);
  const left = x.n * y.d;
  const right = y.n * x.d;
  return left < right ? -1 : left > right ? 1 : 0;
}
