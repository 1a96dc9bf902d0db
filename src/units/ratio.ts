import { Decimal40, ONE, powerOfTen, Wide, type Decimal } from './decimal.js';
import {
  addSmall,
  compareSmall,
  divideSmall,
  multiplySmall,
  smallDecimal,
  type SmallDecimal,
} from './small-decimal.js';

/** A rational of two decimals, the lower one a positive whole number. */
export interface BigRatio {
  readonly n: Decimal;
  readonly d: Decimal;
}

/**
 * An exact rational. Values whose digits end and fit stand as two whole floats over a power of ten;
 * the others, such as a third of an inch or a pound per cubic foot, as two `decimal.js` decimals.
 * Arithmetic moves from the one to the other by itself and never rounds.
 */
export type Ratio = SmallDecimal | BigRatio;

/** From this many digits on a denominator is divided out where the quotient ends. */
const LONG_DENOMINATOR = 60;
/** Beyond this many digits it is worked out in any case, to 250 digits. */
const LONGEST_DENOMINATOR = 120;

/** True for a value kept in floats. */
export const isSmall = (a: Ratio): a is SmallDecimal => typeof a.n === 'number';

export const ZERO_RATIO: SmallDecimal = Object.freeze({ n: 0, d: 1 });
export const ONE_RATIO: SmallDecimal = Object.freeze({ n: 1, d: 1 });

/** A whole float as a ratio. */
export const wholeRatio = (n: number): Ratio =>
  Number.isSafeInteger(n) ? smallDecimal(n, 1) : ratio(new Wide(n));

/** A decimal as a ratio. */
export const decimalRatio = (value: Decimal): Ratio => ratio(new Wide(value));

/** Makes a ratio of two decimals; the denominator must be positive. */
export function ratio(n: Decimal, d: Decimal = ONE): Ratio {
  if (n.isZero()) return ZERO_RATIO;
  if (d === ONE || d.eq(ONE)) return shrink(n);
  if (!d.isInteger()) {
    const scale = powerOfTen(d.decimalPlaces());
    return ratio(n.times(scale), d.times(scale));
  }
  if (endsWhenDividedBy(d)) return shrink(n.div(d));
  return d.precision() > LONG_DENOMINATOR ? shortened(n, d) : { n, d };
}

/** `a + b` */
export function addRatios(a: Ratio, b: Ratio): Ratio {
  const small = isSmall(a) && isSmall(b) ? addSmall(a, b) : undefined;
  if (small !== undefined) return small;
  const [x, y] = [widen(a), widen(b)];
  if (x.d === y.d) return ratio(x.n.plus(y.n), x.d);
  return ratio(x.n.times(y.d).plus(y.n.times(x.d)), x.d.times(y.d));
}

/** `a - b` */
export const subtractRatios = (a: Ratio, b: Ratio): Ratio => addRatios(a, negateRatio(b));

/** `-a`, with no negative zero. */
export function negateRatio(a: Ratio): Ratio {
  if (isSmall(a)) return { n: a.n === 0 ? 0 : -a.n, d: a.d };
  return { n: a.n.neg(), d: a.d };
}

/** `a x b` */
export function multiplyRatios(a: Ratio, b: Ratio): Ratio {
  const small = isSmall(a) && isSmall(b) ? multiplySmall(a, b) : undefined;
  if (small !== undefined) return small;
  const [x, y] = [widen(a), widen(b)];
  return ratio(x.n.times(y.n), x.d.times(y.d));
}

/** `a / b`; the caller has made sure that b is not zero. */
export function divideRatios(a: Ratio, b: Ratio): Ratio {
  const small = isSmall(a) && isSmall(b) ? divideSmall(a, b) : undefined;
  if (small !== undefined) return small;
  const [x, y] = [widen(a), widen(b)];
  const n = x.n.times(y.d);
  const d = x.d.times(y.n);
  return d.isNegative() ? ratio(n.neg(), d.neg()) : ratio(n, d);
}

/** -1, 0 or 1 as a is less than, equal to or more than b. */
export function compareRatios(a: Ratio, b: Ratio): -1 | 0 | 1 {
  const small = isSmall(a) && isSmall(b) ? compareSmall(a, b) : undefined;
  if (small !== undefined) return small;
  const [x, y] = [widen(a), widen(b)];
  const order = x.d === y.d ? x.n.cmp(y.n) : x.n.times(y.d).cmp(y.n.times(x.d));
  return order as -1 | 0 | 1;
}

/** -1, 0 or 1. */
export const signOfRatio = (a: Ratio): -1 | 0 | 1 =>
  Math.sign(isSmall(a) ? a.n : a.n.cmp(0)) as -1 | 0 | 1;

/** `a / b` as a decimal of 40 digits: exact where it ends within them, else rounded to even. */
export function quotientToDecimal(a: Ratio, b: Ratio): Decimal {
  const small = isSmall(a) && isSmall(b) ? divideSmall(a, b) : undefined;
  if (small !== undefined) return smallToDecimal(small);
  const [x, y] = [widen(a), widen(b)];
  // adding nothing turns a negative zero into zero
  return Decimal40.div(x.n.times(y.d), x.d.times(y.n)).plus(0);
}

/** The value as a decimal of 40 digits. */
export function ratioToDecimal(a: Ratio): Decimal {
  return isSmall(a) ? smallToDecimal(a) : Decimal40.div(a.n, a.d);
}

/** The same value, in floats if its 40 digits are all of it and few enough: equals come out alike. */
export function settleRatio(a: Ratio, decimal: Decimal): Ratio {
  if (isSmall(a) || decimal.d.length > 3) return a;
  const quotient = new Wide(decimal);
  return quotient.times(a.d).eq(a.n) ? shrink(quotient) : a;
}

/** The value as the nearest float. */
export const ratioToNumber = (a: Ratio): number => quotientToNumber(a, ONE_RATIO);

/**
 * The value as a float that may be a few units off in its last place, at a tenth of the cost: for
 * decisions that fall back on the exact value where floats cannot tell.
 */
export const roughNumber = (a: Ratio): number => (isSmall(a) ? a.n / a.d : rough(a.n) / rough(a.d));

/** Four words of a decimal are 22 digits or more. */
function rough({ s, e, d: [first = 0, second = 0, third = 0, fourth = 0] }: Decimal): number {
  const upper = first + (second + (third + fourth * 1e-7) * 1e-7) * 1e-7;
  return s * upper * 10 ** (7 * Math.floor(e / 7));
}

/** `a / b` as the nearest float. */
export function quotientToNumber(a: Ratio, b: Ratio): number {
  if (isSmall(a) && isSmall(b)) {
    const [n, d] = [a.n * b.d, a.d * b.n];
    if (Math.abs(n) <= Number.MAX_SAFE_INTEGER && Math.abs(d) <= Number.MAX_SAFE_INTEGER) {
      return n / d + 0;
    }
  }
  return quotientToDecimal(a, b).toNumber();
}

/** The same value in decimals. */
export function widen(a: Ratio): BigRatio {
  if (!isSmall(a)) return a;
  return { n: a.d === 1 ? new Wide(a.n) : new Wide(`${a.n}e-${powerOf(a.d)}`), d: ONE };
}

function smallToDecimal({ n, d }: SmallDecimal): Decimal {
  return d === 1 ? new Decimal40(n) : new Decimal40(`${n}e-${powerOf(d)}`);
}

/** Exponent of a power of ten up to 1e15. */
const powerOf = (d: number): number => Math.round(Math.log10(d));

/** A decimal whose digits fit, as floats; any other as it is. `decimal.js` keeps digits by sevens. */
function shrink(n: Decimal): Ratio {
  const words = n.d;
  if (words.length > 3) return { n, d: ONE };
  let last = words.at(-1) ?? 0;
  let zeros = 0;
  for (; words.length > 1 && last % 10 === 0; zeros += 1) last /= 10;
  let digits = 0;
  for (let k = 0; k < words.length - 1; k += 1) digits = digits * 1e7 + (words[k] ?? 0);
  digits = digits * 10 ** (7 - zeros) + last;
  if (digits > Number.MAX_SAFE_INTEGER) return { n, d: ONE };
  const power = 7 * (Math.floor(n.e / 7) - (words.length - 1)) + zeros;
  const signed = n.isNegative() ? -digits : digits;
  if (power < 0) return (power < -21 ? undefined : lowest(signed, -power)) ?? { n, d: ONE };
  const whole = signed * 10 ** power;
  return Number.isSafeInteger(whole) ? { n: whole, d: 1 } : { n, d: ONE };
}

/** `n / 10^places` in lowest form, if the denominator fits. */
function lowest(n: number, places: number): SmallDecimal | undefined {
  let [upper, left] = [n, places];
  while (left > 0 && upper % 10 === 0) {
    upper /= 10;
    left -= 1;
  }
  return left > 15 ? undefined : { n: upper, d: 10 ** left };
}

/** n / d as a decimal if the quotient ends soon, or if d has grown too long to carry on. */
function shortened(n: Decimal, d: Decimal): Ratio {
  const quotient = new Wide(Decimal40.div(n, d));
  if (quotient.times(d).eq(n)) return shrink(quotient);
  return d.precision() > LONGEST_DENOMINATOR ? { n: n.div(d), d: ONE } : { n, d };
}

/** True for a divisor of twos and fives only: every division by it ends. */
function endsWhenDividedBy(d: Decimal): boolean {
  if (d.e >= 15) return false;
  let rest = d.e < 7 ? (d.d[0] ?? 1) : d.toNumber();
  while (rest % 2 === 0) rest /= 2;
  while (rest % 5 === 0) rest /= 5;
  return rest === 1;
}
