import {
  addBig,
  compareBig,
  divideBig,
  isSmall,
  multiplyBig,
  type Ratio,
  ZERO_RATIO,
} from './big-ratio.js';
import type { Decimal } from './decimal.js';
import { digitsOf, ratioOfDigits } from './read-digits.js';
import { ratioToDecimal } from './read-out.js';
import {
  addSmall,
  compareSmall,
  divideSmall,
  multiplySmall,
  smallDecimal,
  type SmallDecimal,
} from './small-decimal.js';

export { isSmall, ZERO_RATIO, type Ratio } from './big-ratio.js';
export {
  quotientToDecimal,
  quotientToNumber,
  ratioToDecimal,
  ratioToNumber,
  roughNumber,
  roundedQuotient,
} from './read-out.js';

export const ONE_RATIO: SmallDecimal = Object.freeze({ n: 1, d: 1 });

/** A half. */
export const HALF_RATIO: SmallDecimal = Object.freeze({ n: 5, d: 10 });

/** A float, nearly always a whole number, as the ratio of its digits. */
export function wholeRatio(n: number): Ratio {
  if (Number.isSafeInteger(n)) return smallDecimal(n, 1);
  const digits = digitsOf(`${n}`);
  return digits === undefined ? ZERO_RATIO : ratioOfDigits(digits);
}

/** Digits in a word of a decimal of `decimal.js`. */
const WORD = 7;

const exacts = new WeakMap<Decimal, Ratio>();

/** A value as a decimal that shows 40 digits and still counts as all of the value. */
export function exactDecimal(a: Ratio): Decimal {
  const decimal = ratioToDecimal(a);
  if (!isSmall(a)) exacts.set(decimal, a);
  return decimal;
}

/** All of the value that such a decimal was made of; undefined for any other. */
export const exactOfDecimal = (decimal: Decimal): Ratio | undefined => exacts.get(decimal);

/** A decimal as a ratio. */
export const decimalRatio = (decimal: Decimal): Ratio =>
  exactOfDecimal(decimal) ?? ratioOfShown(decimal);

function ratioOfShown({ s, e, d }: Decimal): Ratio {
  const [first = 0, ...rest] = d;
  const digits = rest.reduce((text, word) => text + `${word}`.padStart(WORD, '0'), `${first}`);
  const n = s < 0 ? -BigInt(digits) : BigInt(digits);
  return ratioOfDigits({ n, places: WORD * (rest.length - Math.floor(e / WORD)) });
}

/** `a + b` */
export const addRatios = (a: Ratio, b: Ratio): Ratio =>
  (isSmall(a) && isSmall(b) ? addSmall(a, b) : undefined) ?? addBig(a, b);

/** `a - b` */
export const subtractRatios = (a: Ratio, b: Ratio): Ratio => addRatios(a, negateRatio(b));

/** `-a`, with no negative zero. */
export function negateRatio(a: Ratio): Ratio {
  if (isSmall(a)) return { n: a.n === 0 ? 0 : -a.n, d: a.d };
  return { n: -a.n, d: a.d, places: a.places };
}

/** `a x b` */
export const multiplyRatios = (a: Ratio, b: Ratio): Ratio =>
  (isSmall(a) && isSmall(b) ? multiplySmall(a, b) : undefined) ?? multiplyBig(a, b);

/** `a / b`; b is not zero. */
export const divideRatios = (a: Ratio, b: Ratio): Ratio =>
  (isSmall(a) && isSmall(b) ? divideSmall(a, b) : undefined) ?? divideBig(a, b);

/** -1, 0 or 1 as a is less than, equal to or more than b. */
export const compareRatios = (a: Ratio, b: Ratio): -1 | 0 | 1 =>
  (isSmall(a) && isSmall(b) ? compareSmall(a, b) : undefined) ?? compareBig(a, b);

/** -1, 0 or 1. */
export const signOfRatio = (a: Ratio): -1 | 0 | 1 => (a.n > 0 ? 1 : a.n < 0 ? -1 : 0);

/** `|a|` */
export const absoluteRatio = (a: Ratio): Ratio => (a.n < 0 ? negateRatio(a) : a);

/** The lesser of the two; the first if they are equal. */
export const lesserRatio = (a: Ratio, b: Ratio): Ratio => (compareRatios(b, a) < 0 ? b : a);

/** The greater of the two; the first if they are equal. */
export const greaterRatio = (a: Ratio, b: Ratio): Ratio => (compareRatios(b, a) > 0 ? b : a);
