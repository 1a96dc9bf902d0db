import { Decimal40, ONE, Wide, ZERO, type Decimal } from './decimal.js';

/**
 * An exact rational: two decimals, the lower one a positive whole number. A value whose expansion
 * ends is kept over 1, so that everyday lengths cost one decimal operation, while a third of an inch
 * or a pound per cubic foot stays exact too.
 */
export interface Ratio {
  readonly n: Decimal;
  readonly d: Decimal;
}

/** From this many digits on a denominator is divided out where the quotient ends. */
const LONG_DENOMINATOR = 60;
/** Beyond this many digits it is worked out in any case, to 250 digits. */
const LONGEST_DENOMINATOR = 120;

/** Makes a ratio; the denominator must be positive. */
export function ratio(n: Decimal, d: Decimal = ONE): Ratio {
  if (d === ONE || d.eq(ONE)) return { n, d: ONE };
  if (n.isZero()) return ZERO_RATIO;
  if (!d.isInteger()) {
    const scale = Wide.pow(10, d.decimalPlaces());
    return ratio(n.times(scale), d.times(scale));
  }
  if (endsWhenDividedBy(d)) return { n: n.div(d), d: ONE };
  return d.precision() > LONG_DENOMINATOR ? shortened(n, d) : { n, d };
}

export const ZERO_RATIO: Ratio = Object.freeze({ n: ZERO, d: ONE });

/** `a + b` */
export function addRatios(a: Ratio, b: Ratio): Ratio {
  if (a.d === b.d) return ratio(a.n.plus(b.n), a.d);
  return ratio(a.n.times(b.d).plus(b.n.times(a.d)), a.d.times(b.d));
}

/** `-a`, with no negative zero. */
export function negateRatio(a: Ratio): Ratio {
  return { n: a.n.isZero() ? a.n : a.n.neg(), d: a.d };
}

/** `a x b` */
export function multiplyRatios(a: Ratio, b: Ratio): Ratio {
  const n = a.n.times(b.n);
  return a.d === ONE && b.d === ONE ? { n, d: ONE } : ratio(n, a.d.times(b.d));
}

/** `a / b`; the caller has made sure that b is not zero. */
export function divideRatios(a: Ratio, b: Ratio): Ratio {
  const n = a.n.times(b.d);
  const d = a.d.times(b.n);
  return d.isNegative() ? ratio(n.neg(), d.neg()) : ratio(n, d);
}

/** -1, 0 or 1 as a is less than, equal to or more than b. */
export function compareRatios(a: Ratio, b: Ratio): -1 | 0 | 1 {
  const order = a.d === b.d ? a.n.cmp(b.n) : a.n.times(b.d).cmp(b.n.times(a.d));
  return order as -1 | 0 | 1;
}

/** The value as a decimal of 40 digits: exact where it ends within them, else rounded to even. */
export function ratioToDecimal(a: Ratio): Decimal {
  // up to five groups of seven digits are within 40 digits for certain
  if (a.d === ONE && a.n.d.length <= 5) return new Decimal40(a.n);
  return Decimal40.div(a.n, a.d);
}

/** Largest whole number not above the value, exactly. */
export function floorRatio(a: Ratio): Decimal {
  const whole = a.n.divToInt(a.d);
  return a.n.isNegative() && !whole.times(a.d).eq(a.n) ? whole.minus(ONE) : whole;
}

/** The value in lowest terms as two whole numbers. */
export function lowestTerms(a: Ratio): { readonly n: bigint; readonly d: bigint } {
  const places = a.n.decimalPlaces();
  const n = BigInt(a.n.times(Wide.pow(10, places)).toFixed());
  const d = BigInt(a.d.toFixed()) * 10n ** BigInt(places);
  const common = greatestCommonDivisor(n < 0n ? -n : n, d);
  return { n: n / common, d: d / common };
}

/** True where the decimal expansion of 1 / d ends. */
export function isTerminating(d: bigint): boolean {
  let rest = d;
  while (rest % 2n === 0n) rest /= 2n;
  while (rest % 5n === 0n) rest /= 5n;
  return rest === 1n;
}

function greatestCommonDivisor(a: bigint, b: bigint): bigint {
  let [high, low] = [a, b];
  while (low !== 0n) [high, low] = [low, high % low];
  return high === 0n ? 1n : high;
}

/** n / d as a decimal if the quotient ends soon, or if d has grown too long to carry on. */
function shortened(n: Decimal, d: Decimal): Ratio {
  const quotient = new Wide(Decimal40.div(n, d));
  if (quotient.times(d).eq(n)) return { n: quotient, d: ONE };
  return d.precision() > LONGEST_DENOMINATOR ? { n: n.div(d), d: ONE } : { n, d };
}

/** True for a divisor of twos and fives only: every division by it ends. */
function endsWhenDividedBy(d: Decimal): boolean {
  if (d.e >= 15) return false;
  let rest = d.e < 7 ? (d.d[0] ?? 0) : d.toNumber();
  while (rest % 2 === 0) rest /= 2;
  while (rest % 5 === 0) rest /= 5;
  return rest === 1;
}
