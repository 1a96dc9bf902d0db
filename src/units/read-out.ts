import { isSmall, widened, type Ratio } from './big-ratio.js';
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

/** `a / b` as a decimal of 40 digits: exact where it ends within them, else rounded to even. */
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

/** `n / d` in 40 digits, a tie to the even one. */
function bigToDecimal(n: bigint, d: bigint): Decimal {
  if (n === 0n) return new Decimal40(0);
  const upper = sizeOf(n);
  const lower = sizeOf(d);
  let places = DIGITS - Math.floor((bitsOf(upper) - bitsOf(lower)) * Math.LOG10E * Math.LN2);
  let digits = scaled(upper, lower, places);
  for (; digits < LEAST; digits = scaled(upper, lower, places)) places += 1;
  for (; digits >= MOST; digits = scaled(upper, lower, places)) places -= 1;
  const sign = n < 0n !== d < 0n ? '-' : '';
  return new Decimal40(`${sign}${rounded(upper, lower, { places, digits })}e${-places}`);
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

/** More binary digits than a float has, so that the last of them tells what was left out. */
const BITS = 66;

function bigToNumber(n: bigint, d: bigint): number {
  const upper = sizeOf(n);
  const lower = sizeOf(d);
  const shift = BITS - bitsOf(upper) + bitsOf(lower);
  const raised = shift > 0 ? upper << BigInt(shift) : upper;
  const unit = shift < 0 ? lower << BigInt(-shift) : lower;
  const whole = raised / unit;
  // a last digit that is set breaks ties as all that was left out would
  const size = Number(whole * unit === raised ? whole : whole | 1n);
  return timesPowerOfTwo(n < 0n !== d < 0n ? -size : size, -shift) + 0;
}

/** In two steps: a power of two may lie beyond the floats where the product does not. */
function timesPowerOfTwo(value: number, power: number): number {
  const half = Math.trunc(power / 2);
  return value * 2 ** half * 2 ** (power - half);
}

/**
 * The value as a float that may be a few units off in its last place, at a tenth of the cost: for
 * decisions that fall back on the exact value where floats cannot tell.
 */
export function roughNumber(a: Ratio): number {
  if (isSmall(a)) return a.n / a.d;
  const n = Number(a.n);
  const d = Number(a.d);
  return Number.isFinite(n) && Number.isFinite(d) ? n / d : bigToNumber(a.n, a.d);
}
