import { decimalOf, isSmall, widened, type Ratio } from './big-ratio.js';
import { Decimal40, type Decimal } from './decimal.js';
import { divideSmall, type SmallDecimal } from './small-decimal.js';
import { bitsOf, powerOfTen, sizeOf } from './whole.js';

/** Significant digits of a decimal that is read out. */
const DIGITS = 40;
const LEAST = powerOfTen(DIGITS - 1);
const MOST = powerOfTen(DIGITS);

/** The value as a decimal of 40 digits. */
export function ratioToDecimal(a: Ratio): Decimal {
  if (isSmall(a)) return smallToDecimal(a);
  return sizeOf(a.n) < MOST && a.places >= 0
    ? new Decimal40(`${a.n}e-${a.places}`)
    : bigToDecimal(a.n, a.d);
}

/** `a / b` as a decimal of 40 digits: exact if it ends within them, else rounded to even. */
export function quotientToDecimal(a: Ratio, b: Ratio): Decimal {
  const small = isSmall(a) && isSmall(b) ? divideSmall(a, b) : undefined;
  if (small !== undefined) return smallToDecimal(small);
  const x = widened(a);
  const y = widened(b);
  return bigToDecimal(x.n * y.d, x.d * y.n);
}

function smallToDecimal({ n, d }: SmallDecimal): Decimal {
  return d === 1 ? new Decimal40(n) : new Decimal40(`${n}e-${Math.round(Math.log10(d))}`);
}

/**
 * `a / b` as the exact value of its 40 digits; what two floats hold stays as it is. A product of many
 * digits need not be brought into lowest terms for that.
 */
export function roundedQuotient(a: Ratio, b: Ratio): Ratio {
  const small = isSmall(a) && isSmall(b) ? divideSmall(a, b) : undefined;
  if (small !== undefined) return small;
  const x = widened(a);
  const y = widened(b);
  const { digits, places } = fortyDigits(x.n * y.d, x.d * y.n);
  return places < 0 ? decimalOf(digits * powerOfTen(-places), 0) : decimalOf(digits, places);
}

function bigToDecimal(n: bigint, d: bigint): Decimal {
  const { digits, places } = fortyDigits(n, d);
  return new Decimal40(`${digits}e${-places}`);
}

/** `n / d` in 40 digits, a tie to the even one: `digits / 10^places`. */
function fortyDigits(n: bigint, d: bigint): { readonly digits: bigint; readonly places: number } {
  if (n === 0n) return { digits: 0n, places: 0 };
  const upper = sizeOf(n);
  const lower = sizeOf(d);
  let places = DIGITS - Math.floor((bitsOf(upper) - bitsOf(lower)) * Math.LOG10E * Math.LN2);
  let digits = scaled(upper, lower, places);
  for (; digits < LEAST; digits = scaled(upper, lower, places)) places += 1;
  for (; digits >= MOST; digits = scaled(upper, lower, places)) places -= 1;
  const size = rounded(upper, lower, { places, digits });
  return { digits: n < 0n !== d < 0n ? -size : size, places };
}

/** The whole of `n x 10^places / d`. */
const scaled = (n: bigint, d: bigint, places: number): bigint =>
  places >= 0 ? (n * powerOfTen(places)) / d : n / (d * powerOfTen(-places));

function rounded(
  n: bigint,
  d: bigint,
  { places, digits }: { readonly places: number; readonly digits: bigint },
): bigint {
  const unit = places >= 0 ? d : d * powerOfTen(-places);
  const rest = (places >= 0 ? n * powerOfTen(places) : n) - digits * unit;
  const over = 2n * rest;
  return over > unit || (over === unit && digits % 2n === 1n) ? digits + 1n : digits;
}

/** The value as the nearest float. */
export const ratioToNumber = (a: Ratio): number => (isSmall(a) ? a.n / a.d : bigToNumber(a.n, a.d));

/** `a / b` as the nearest float. */
export function quotientToNumber(a: Ratio, b: Ratio): number {
  if (isSmall(a) && isSmall(b)) {
    const n = a.n * b.d;
    const d = a.d * b.n;
    if (Math.abs(n) <= Number.MAX_SAFE_INTEGER && Math.abs(d) <= Number.MAX_SAFE_INTEGER) {
      return n / d + 0;
    }
  }
  const x = widened(a);
  const y = widened(b);
  return bigToNumber(x.n * y.d, x.d * y.n);
}

/** More binary digits than a float has; the last one shows whether digits were left out. */
const BITS = 66;

function bigToNumber(n: bigint, d: bigint): number {
  const upper = sizeOf(n);
  const lower = sizeOf(d);
  const shift = BITS - bitsOf(upper) + bitsOf(lower);
  const raised = shift > 0 ? upper << BigInt(shift) : upper;
  const unit = shift < 0 ? lower << BigInt(-shift) : lower;
  const whole = raised / unit;
  // setting the last digit breaks ties the way the omitted digits would
  const size = Number(whole * unit === raised ? whole : whole | 1n);
  return timesPowerOfTwo(n < 0n !== d < 0n ? -size : size, -shift) + 0;
}

/** In two steps: the power of two may overflow although the product does not. */
function timesPowerOfTwo(value: number, power: number): number {
  const half = Math.trunc(power / 2);
  return value * 2 ** half * 2 ** (power - half);
}

/**
 * The value as a float that may be a few units off in the last place, at a tenth of the cost. For
 * decisions that fall back on the exact value if floats cannot tell.
 */
export function roughNumber(a: Ratio): number {
  if (isSmall(a)) return a.n / a.d;
  const n = Number(a.n);
  const d = Number(a.d);
  return Number.isFinite(n) && Number.isFinite(d) ? n / d : bigToNumber(a.n, a.d);
}
