import { fault } from '../errors.js';
import { divideBig, ZERO_RATIO, type Ratio } from './big-ratio.js';
import { isDecimal, type Decimal } from './decimal.js';
import type { NumberInput } from './quantity-types.js';
import { exactOfDecimal, wholeRatio } from './ratio.js';
import { digitsOf, ratioOfDigits, type Digits } from './read-digits.js';
import { shownText } from '../shown-text.js';
import { shown } from './shown.js';
import { readSmall } from './small-decimal.js';
import { sizeOf } from './whole.js';

export type { NumberInput } from './quantity-types.js';

/** Maximum digits of a fraction: no measure has more, and working it out would take long. */
const LONGEST_NUMBER = 20_000;
/** Measures are between these powers of ten in any unit; beyond them the input is a mistake. */
const LARGEST_EXPONENT = 60;

/**
 * Reads a number exactly: `0.1` is one tenth, not the nearest binary fraction.
 *
 * @throws `NOT_FINITE`, `NOT_A_NUMBER`, `OUT_OF_RANGE`, `WRONG_TYPE`, `DIVISION_BY_ZERO`, `TOO_LONG`
 */
export function readNumber(value: NumberInput): Ratio {
  switch (typeof value) {
    case 'number':
      return readFloat(value, LARGEST_EXPONENT);
    case 'string':
      return readSmall(value) ?? ratioOf(termsIn(value), LARGEST_EXPONENT);
    default:
      return exactOfDecimal(value) ?? readNumber(textOf(value));
  }
}

/** Reads a number that the library wrote, of any size. Internal. */
export function readWritten(value: string | number): Ratio {
  if (typeof value === 'number') return readFloat(value, LONGEST_NUMBER);
  return readSmall(value) ?? ratioOf(termsIn(value), LONGEST_NUMBER);
}

/** A float means its shortest digits. */
function readFloat(value: number, most: number): Ratio {
  if (!Number.isFinite(value)) throw fault('NOT_FINITE', `${value} is not a number`);
  if (Number.isSafeInteger(value)) return wholeRatio(value);
  return readSmall(`${value}`) ?? ratioOf(termsIn(`${value}`), most);
}

/** The digits of a decimal of any copy of `decimal.js`. */
function textOf(value: unknown): string {
  if (!isDecimal(value)) throw fault('WRONG_TYPE', `expected a number, got ${shown(value)}`);
  const text = plainText(value);
  if (/^-?(?:NaN|Infinity)$/.test(text)) throw fault('NOT_FINITE', `${text} is not a number`);
  return text;
}

function plainText(value: Decimal): string {
  try {
    return value.toString();
  } catch {
    throw fault('WRONG_TYPE', 'expected a number, got an object that only looks like a decimal');
  }
}

interface Terms {
  readonly n: Digits;
  readonly d: Digits;
}

const ONE: Digits = { n: 1n, places: 0 };

function termsIn(text: string): Terms {
  if (text.length > LONGEST_NUMBER) {
    throw fault('TOO_LONG', `${shown(text)} has too many digits for a number`);
  }
  const slash = text.indexOf('/');
  if (slash < 0) return { n: readDigits(text, text), d: ONE };
  const [upper, lower] = [text.slice(0, slash), text.slice(slash + 1)];
  const terms = { n: readDigits(upper, text), d: readDigits(lower, text) };
  if (terms.d.n !== 0n) return terms;
  throw fault('DIVISION_BY_ZERO', `${shown(text)} divides by zero`, { text: shownText(text) });
}

/** Reads a part of a number; a fault quotes all of it. */
function readDigits(part: string, text: string): Digits {
  const digits = digitsOf(part);
  if (digits !== undefined) return digits;
  throw fault('NOT_A_NUMBER', `${shown(text)} is not a number`, { text: shownText(text) });
}

/** The number as a ratio, if its power of ten is within the limit, up or down. */
function ratioOf({ n, d }: Terms, most: number): Ratio {
  if (n.n === 0n) return ZERO_RATIO;
  const exponent = exponentOf(n) - exponentOf(d);
  if (Math.abs(exponent) > most) {
    const what = exponent > 0 ? 'large' : 'small';
    throw fault('OUT_OF_RANGE', `10^${exponent} is too ${what} to be a measurement`);
  }
  return d === ONE ? ratioOfDigits(n) : divideBig(ratioOfDigits(n), ratioOfDigits(d));
}

/** The power of ten of the first digit. */
const exponentOf = ({ n, places }: Digits): number => `${sizeOf(n)}`.length - 1 - places;
