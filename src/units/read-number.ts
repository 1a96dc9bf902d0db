import { fault, type SettlineError } from '../errors.js';
import { isDecimal, ONE, Wide, type Decimal } from './decimal.js';
import { ratio, wholeRatio, ZERO_RATIO, type Ratio } from './ratio.js';
import { readSmall } from './small-decimal.js';

/** A plain number as callers may give it: a number, digits as text (`'0.05'`, `'1/3'`) or a decimal. */
export type NumberInput = number | string | Decimal;

const DIGITS = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d{1,3})?$/;
const LONGEST_NUMBER = 1200;
const LARGEST_EXPONENT = 60;

/**
 * Reads a plain number exactly: `0.1` is one tenth, not the nearest binary fraction.
 *
 * @throws `NOT_FINITE`, `NOT_A_NUMBER`, `OUT_OF_RANGE`, `WRONG_TYPE`, `ZERO_DENOMINATOR`
 */
export function readNumber(value: NumberInput): Ratio {
  switch (typeof value) {
    case 'number':
      if (!Number.isFinite(value)) throw fault('NOT_FINITE', `${value} is no number`);
      if (Number.isSafeInteger(value)) return wholeRatio(value);
      return readSmall(`${value}`) ?? inRange(new Wide(value), ONE);
    case 'string':
      return readNumberText(value);
    default:
      if (!isDecimal(value)) throw notANumber(value);
      if (!value.isFinite()) throw fault('NOT_FINITE', `${value.toString()} is no number`);
      return inRange(new Wide(value), ONE);
  }
}

function readNumberText(text: string): Ratio {
  const small = readSmall(text);
  if (small !== undefined) return small;
  if (text.length > LONGEST_NUMBER) throw fault('TOO_LONG', 'too many digits for a number');
  const slash = text.indexOf('/');
  if (slash < 0) return inRange(readDigits(text), ONE);
  const n = readDigits(text.slice(0, slash));
  const d = readDigits(text.slice(slash + 1));
  if (d.isZero()) throw fault('ZERO_DENOMINATOR', `${text} divides by zero`, { text });
  return d.isNegative() ? inRange(n.neg(), d.neg()) : inRange(n, d);
}

function readDigits(text: string): Decimal {
  if (!DIGITS.test(text)) {
    throw fault('NOT_A_NUMBER', `${JSON.stringify(text)} is no number`, { text });
  }
  return new Wide(text);
}

/** The number as a ratio, if it can be a measurement; zero without a sign. */
function inRange(n: Decimal, d: Decimal): Ratio {
  if (n.isZero()) return ZERO_RATIO;
  if (n.e - d.e > LARGEST_EXPONENT) {
    throw fault('OUT_OF_RANGE', `10^${n.e - d.e} is beyond any measurement`);
  }
  return ratio(n, d);
}

function notANumber(value: unknown): SettlineError {
  const got = value === null ? 'null' : typeof value;
  return fault('WRONG_TYPE', `expected a number, got ${got}`, { got });
}
