/**
 *
 * Decimals that fit two floats exactly: a whole number `n` below 2^53 over a power of ten `d`.
 * Nearly every value on a site fits, and sums and products take a few nanoseconds. Every function
 * returns undefined if the result does not fit; the caller then continues in whole numbers of any
 * size.
 *
 * In lowest form `n` does not end in zero unless `d` is 1, so equal values have equal fields.
 */
export interface SmallDecimal {
  /** A whole number of either sign. */
  readonly n: number;
  /** A power of ten. */
  readonly d: number;
}

const MOST = Number.MAX_SAFE_INTEGER;

/** Most decimal places. Internal. */
export const LARGEST_PLACES = 15;
/** Largest power of ten in a denominator. */
const LARGEST_POWER = 1e15;
/** The largest power of ten that a float holds exactly. */
const LARGEST_EXACT = 1e22;

/** Reduces `n / d` to lowest form. */
export function smallDecimal(n: number, d: number): SmallDecimal {
  let upper = n;
  let lower = d;
  while (lower > 1) {
    // below 2^53 a tenth is a whole float only if it is whole (and a float remainder is slow)
    const tenth = upper / 10;
    if (tenth !== Math.floor(tenth)) break;
    upper = tenth;
    lower /= 10;
  }
  return { n: upper === 0 ? 0 : upper, d: lower };
}

/** `a + b`, if the sum is a small decimal. */
export function addSmall(a: SmallDecimal, b: SmallDecimal): SmallDecimal | undefined {
  if (a.d === b.d) return fitting(a.n + b.n, a.d);
  if (a.d < b.d) return addSmall(b, a);
  const raised = b.n * (a.d / b.d);
  return Math.abs(raised) > MOST ? undefined : fitting(a.n + raised, a.d);
}

/** `a x b`, if the product is a small decimal. */
export function multiplySmall(a: SmallDecimal, b: SmallDecimal): SmallDecimal | undefined {
  const d = a.d * b.d;
  return d > LARGEST_POWER ? undefined : fitting(a.n * b.n, d);
}

/** `a / b`, if the quotient is a small decimal. */
export function divideSmall(a: SmallDecimal, b: SmallDecimal): SmallDecimal | undefined {
  let [n, d] = [a.n, a.d];
  // zeros are appended to the dividend until the divisor divides it
  while (n % b.n !== 0) {
    n *= 10;
    d *= 10;
    if (Math.abs(n) > MOST || d > LARGEST_EXACT) return undefined;
  }
  const quotient = n / b.n;
  if (d >= b.d) return d / b.d > LARGEST_POWER ? undefined : fitting(quotient, d / b.d);
  return fitting(quotient * (b.d / d), 1);
}

/** -1, 0 or 1; undefined if the comparison does not fit. */
export function compareSmall(a: SmallDecimal, b: SmallDecimal): -1 | 0 | 1 | undefined {
  const left = a.d >= b.d ? a.n : a.n * (b.d / a.d);
  const right = b.d >= a.d ? b.n : b.n * (a.d / b.d);
  if (Math.abs(left) > MOST || Math.abs(right) > MOST) return undefined;
  return left < right ? -1 : left > right ? 1 : 0;
}

/**
 * Reads plain digits (`12`, `-0.375`, `.5`): up to fifteen digits; undefined for anything else.
 */
export function readSmall(text: string): SmallDecimal | undefined {
  const first = text.charCodeAt(0);
  const isSigned = first === 45 || first === 43;
  let n = 0;
  let d = 0;
  let digits = 0;
  for (let at = isSigned ? 1 : 0; at < text.length; at += 1) {
    const digit = text.charCodeAt(at) - 48;
    if (digit >= 0 && digit <= 9) {
      n = n * 10 + digit;
      digits += 1;
      d *= 10;
    } else if (digit === -2 && d === 0) {
      d = 1;
    } else {
      return undefined;
    }
  }
  if (digits === 0 || digits > 15) return undefined;
  return smallDecimal(first === 45 ? -n : n, d === 0 ? 1 : d);
}

function fitting(n: number, d: number): SmallDecimal | undefined {
  return Math.abs(n) > MOST ? undefined : smallDecimal(n, d);
}
