import { capital } from '../capital.js';
import { isSettlineError, type ErrorCode, type FieldPath } from '../errors.js';
import type { Dimension } from '../units/catalogue.js';
import { NO_SUCH_FIELD, toQuantity, type QuantityInput } from '../units/construct.js';
import { isDecimal } from '../units/decimal.js';
import { exactOf, fromSI, isQuantity, type Quantity } from '../units/quantity.js';
import {
  compareRatios,
  ratioToDecimal,
  roughNumber,
  signOfRatio,
  ZERO_RATIO,
  type Ratio,
} from '../units/ratio.js';
import { readNumber, type NumberInput } from '../units/read-number.js';
import { EXAMPLES } from './examples.js';
import { limitText } from './limit-text.js';
import { isPlain } from './plain.js';
import type { Reader } from './reader.js';
import type { NumberRule, QuantityRule, Sign } from './rule.js';
import { shownText } from '../shown-text.js';
import { shown } from './shown.js';
import { withPoint } from './with-point.js';

type Fail = Reader['fail'];

/** Reads a number by its rule, exactly. Internal. */
export function readRuledNumber(
  value: unknown,
  path: FieldPath,
  rule: NumberRule,
  fail: Fail,
): Ratio {
  const write = () => `write a number, such as ${rule.example ?? '0.8'}`;
  if (value === undefined) {
    fail('REQUIRED', path, `missing. ${capital(write())}`);
    return ZERO_RATIO;
  }
  const read = guarded(path, fail, () => readNumber(value as NumberInput), write, value);
  if (read === undefined) return ZERO_RATIO;
  const got = () => shown(value);
  if (!checkSign(signOfRatio(read), rule.sign, path, got, fail)) return ZERO_RATIO;
  if (!isDecimal(value) && isTiny(read)) {
    failTiny(path, got, fail);
    return ZERO_RATIO;
  }
  checkRange(read, rule, { path, got }, fail);
  return read;
}

function checkRange(
  value: Ratio,
  { least, most, example }: NumberRule,
  { path, got }: { readonly path: FieldPath; readonly got: () => string },
  fail: Fail,
) {
  const isLow = least !== undefined && compareRatios(value, readNumber(least)) < 0;
  const isHigh = most !== undefined && compareRatios(value, readNumber(most)) > 0;
  if (!isLow && !isHigh) return;
  const span =
    least === undefined
      ? `more than ${most}`
      : most === undefined
        ? `less than ${least}`
        : `outside ${least} to ${most}`;
  const write = example === undefined ? '' : `. Write a number, such as ${example}`;
  fail('OUT_OF_RANGE', path, `${got()} is ${span}${write}`, {
    got: got(),
    ...(least !== undefined && { least }),
    ...(most !== undefined && { most }),
  });
}

/** Reads a quantity by its rule. Internal. */
export function readQuantity<D extends Dimension>(
  dimension: D,
  value: unknown,
  path: FieldPath,
  rule: QuantityRule<D>,
  fail: Fail,
): Quantity<D> {
  const standIn = () => fromSI(dimension, ZERO_RATIO);
  const write = () => rule.write?.(value) ?? `write ${rule.example ?? EXAMPLES[dimension]}`;
  if (value === undefined) {
    fail('REQUIRED', path, `missing. ${capital(write())}`);
    return standIn();
  }
  const read = guarded(path, fail, () => readStrictly(dimension, value, path, fail), write, value);
  if (read === undefined) return standIn();
  const got = () => asWritten(value, read);
  const exact = exactOf(read);
  if (!checkSign(signOfRatio(exact), rule.sign, path, got, fail)) return standIn();
  // a calculated quantity may be tiny: zero but for a rounding
  if (!isQuantity(value) && isTiny(exact)) {
    failTiny(path, got, fail);
    return standIn();
  }
  checkMost(read, rule, { path, got }, fail);
  return read;
}

/** A quantity; `{ value, unit }` may have no other key. */
function readStrictly<D extends Dimension>(
  dimension: D,
  value: unknown,
  path: FieldPath,
  fail: Fail,
): Quantity<D> {
  if (!isPlain(value)) return toQuantity(dimension, value as QuantityInput<D>);
  for (const key of Object.keys(value)) {
    if (key === 'value' || key === 'unit') continue;
    fail('UNKNOWN_FIELD', [...path, key], NO_SUCH_FIELD, { key: shownText(key) });
  }
  const { value: amount, unit } = value;
  return toQuantity(dimension, { value: amount, unit } as QuantityInput<D>);
}

/** The value as the caller wrote it. Internal. */
export function asWritten(value: unknown, read: { toString(): string }): string {
  if (typeof value === 'string') return shownText(value.trim());
  if (isPlain(value) && typeof value['unit'] === 'string') {
    return `${shownText(String(value['value']))} ${value['unit']}`;
  }
  return read.toString();
}

function checkMost<D extends Dimension>(
  read: Quantity<D>,
  { most, example }: QuantityRule<D>,
  { path, got }: { readonly path: FieldPath; readonly got: () => string },
  fail: Fail,
) {
  if (most === undefined || read.abs().compare(most) <= 0) return;
  const write = example === undefined ? '' : `: write a value such as ${example}`;
  const limit = limitText(most, read);
  const message = `${got()} is beyond ${limit}. Check the digits and the unit${write}`;
  fail('OUT_OF_RANGE', path, message, { most: limit, got: got() });
}

function checkSign(
  value: -1 | 0 | 1,
  sign: Sign,
  path: FieldPath,
  text: () => string,
  fail: Fail,
): boolean {
  if (sign === 'positive' && value <= 0) {
    fail('NOT_POSITIVE', path, `${text()} is not greater than zero. Write a positive value`, {
      got: text(),
    });
    return false;
  }
  if (sign === 'not-negative' && value < 0) {
    fail('NEGATIVE', path, `${text()} is negative. Write 0 or more`, { got: text() });
    return false;
  }
  return true;
}

/** No measure of the work is this small in any unit: 1e-30 is a mistake, not a measurement. */
const SMALLEST_EXPONENT = -30;

/** A float above this is above ten to that exponent, however it was rounded. */
const DOUBTFUL = 2 * 10 ** SMALLEST_EXPONENT;

function isTiny(value: Ratio): boolean {
  if (signOfRatio(value) === 0 || Math.abs(roughNumber(value)) >= DOUBTFUL) return false;
  return ratioToDecimal(value).e < SMALLEST_EXPONENT;
}

function failTiny(path: FieldPath, got: () => string, fail: Fail): void {
  const message = `${got()} is too small to be measured. Check the digits and the unit`;
  fail('OUT_OF_RANGE', path, message, { got: got() });
}

/** Runs a reading and moves its fault to the field. */
function guarded<T>(
  path: FieldPath,
  fail: Fail,
  read: () => T,
  write: () => string,
  given: unknown,
): T | undefined {
  try {
    return read();
  } catch (error) {
    if (!isSettlineError(error)) throw error;
    for (const { code, message, params } of error.issues) {
      const what = code === 'UNIT_MISSING' ? `${withoutUnit(given)} has no unit` : message;
      const instead = () => capital(asMeant(given) ?? write());
      fail(code, path, HINTED.has(code) ? what : `${what}. ${instead()}`, params);
    }
    return undefined;
  }
}

/** Codes whose message already says what to write instead. */
const HINTED: ReadonlySet<ErrorCode> = new Set(['OUT_OF_RANGE', 'UNIT_AMBIGUOUS', 'UNIT_UNKNOWN']);

/** A value with a decimal comma as it would be read. */
function asMeant(given: unknown): string | undefined {
  if (typeof given !== 'string') return undefined;
  const meant = withPoint(given).map((text) => JSON.stringify(shownText(text)));
  return meant.length === 0 ? undefined : `write ${meant.join(' or ')}`;
}

/** The number given without a unit, alone or as `{ value }`. */
const withoutUnit = (given: unknown): string => shown(isPlain(given) ? given['value'] : given);
