import {
  isSettlineError,
  SettlineError,
  type ErrorCode,
  type FieldPath,
  type Issue,
} from './errors.js';
import type { Dimension } from './units/catalogue.js';
import { fromSIDecimal, type Quantity } from './units/quantity.js';
import { toQuantity, type QuantityInput } from './units/construct.js';
import { ZERO, type Decimal } from './units/decimal.js';
import { ratioToDecimal } from './units/ratio.js';
import { readNumber, type NumberInput } from './units/read-number.js';

/** Which values of a field make sense. */
export type Sign = 'positive' | 'not-negative' | 'any';

/** What a quantity in a field may be. */
export interface QuantityRule<D extends Dimension> {
  readonly sign: Sign;
  /** Beyond this, in magnitude, the value is a slip. */
  readonly most?: Quantity<D>;
}

/** What a number in a field may be. */
export interface NumberRule {
  readonly sign: Sign;
  readonly least?: number;
  readonly most?: number;
}

const EXAMPLES: Readonly<Record<Dimension, string>> = {
  length: 'a length such as "6 in" or { "value": 150, "unit": "mm" }',
  area: 'an area such as "320 ft2" or { "value": 30, "unit": "m2" }',
  volume: 'a volume such as "10 yd3" or { "value": 8, "unit": "m3" }',
  mass: 'a mass such as "13 t" or { "value": 26000, "unit": "lb" }',
  density: 'a density such as "3700 lb/yd3" or { "value": 2200, "unit": "kg/m3" }',
  force: 'a force such as "13 lbf" or { "value": 60, "unit": "N" }',
  'line-weight': 'a weight per length such as "1.2 g/m" or { "value": 0.012, "unit": "N/m" }',
  pressure: 'a pressure such as "35 psi" or { "value": 240, "unit": "kPa" }',
  slope: 'a slope such as "2%", "1:48" or "1/4 in per ft"',
  angle: 'an angle such as "45 deg"',
  time: 'a time such as "22 s" or { "value": 1.5, "unit": "h" }',
  speed: 'a speed such as "20 m/min" or { "value": 3, "unit": "mph" }',
  flow: 'a flow such as "120 l/min" or { "value": 0.35, "unit": "m3/h" }',
};

/**
 * Reads the fields of one input object and gathers every fault, so that a caller hears of all at
 * once. After a fault a stand-in is returned; {@link Reader.finish} throws before it can be used.
 */
export interface Reader {
  object(value: unknown, path: FieldPath): Readonly<Record<string, unknown>>;
  list(value: unknown, path: FieldPath): readonly unknown[];
  text(value: unknown, path: FieldPath): string;
  flag(value: unknown, path: FieldPath): boolean;
  choice<T extends string>(value: unknown, path: FieldPath, choices: readonly [T, ...T[]]): T;
  number(value: unknown, path: FieldPath, rule: NumberRule): Decimal;
  quantity<D extends Dimension>(
    dimension: D,
    value: unknown,
    path: FieldPath,
    rule: QuantityRule<D>,
  ): Quantity<D>;
  fail(code: ErrorCode, path: FieldPath, message: string, params?: Issue['params']): void;
  /** How many faults there are so far: what stands in for a value is not to be judged. */
  faults(): number;
  /** Throws one {@link SettlineError} with all faults, if there are any. */
  finish(): void;
}

/** Makes a reader with no faults yet. */
export function makeReader(): Reader {
  const issues: Issue[] = [];
  const fail: Reader['fail'] = (code, path, message, params = {}) => {
    issues.push(Object.freeze({ path: Object.freeze([...path]), code, message, params }));
  };
  return {
    fail,
    object: (value, path) => readObject(value, path, fail),
    list: (value, path) => readList(value, path, fail),
    text: (value, path) => readText(value, path, fail),
    flag: (value, path) => readFlag(value, path, fail),
    choice: (value, path, choices) => readChoice(value, path, choices, fail),
    number: (value, path, rule) => readRuledNumber(value, path, rule, fail),
    quantity: (dimension, value, path, rule) => readQuantity(dimension, value, path, rule, fail),
    faults: () => issues.length,
    finish() {
      const [first, ...rest] = issues;
      if (first !== undefined) throw new SettlineError([first, ...rest]);
    },
  };
}

type Fail = Reader['fail'];

/** How a value that does not belong is shown in a message. */
export function shown(value: unknown): string {
  if (value === null) return 'null';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object') return 'an object';
  if (typeof value === 'string') return JSON.stringify(value.slice(0, 40));
  if (typeof value === 'number' || typeof value === 'boolean') return `${value}`;
  return typeof value;
}

function readObject(
  value: unknown,
  path: FieldPath,
  fail: Fail,
): Readonly<Record<string, unknown>> {
  if (typeof value === 'object' && value !== null && !Array.isArray(value)) {
    return value as Record<string, unknown>;
  }
  wrongType(value, path, 'an object { ... }', fail);
  return {};
}

function readList(value: unknown, path: FieldPath, fail: Fail): readonly unknown[] {
  if (!Array.isArray(value)) {
    wrongType(value, path, 'a list [ ... ]', fail);
    return [];
  }
  if (value.length === 0) fail('EMPTY_LIST', path, 'the list is empty');
  return value;
}

function readText(value: unknown, path: FieldPath, fail: Fail): string {
  if (typeof value === 'string' && value.trim() !== '') return value;
  if (typeof value === 'string') fail('EMPTY', path, 'the text is empty');
  else wrongType(value, path, 'text', fail);
  return '';
}

function readFlag(value: unknown, path: FieldPath, fail: Fail): boolean {
  if (typeof value === 'boolean') return value;
  wrongType(value, path, 'true or false', fail);
  return false;
}

function readChoice<T extends string>(
  value: unknown,
  path: FieldPath,
  choices: readonly [T, ...T[]],
  fail: Fail,
): T {
  const found = choices.find((choice) => choice === value);
  if (found !== undefined) return found;
  const list = choices.join(', ');
  if (value === undefined) fail('REQUIRED', path, `is missing: choose one of ${list}`);
  else fail('UNKNOWN_CHOICE', path, `${shown(value)} is not one of ${list}`, { choices: list });
  return choices[0];
}

function readRuledNumber(value: unknown, path: FieldPath, rule: NumberRule, fail: Fail): Decimal {
  if (value === undefined) {
    fail('REQUIRED', path, 'is missing: write a number such as 0.8');
    return ZERO;
  }
  const read = guarded(path, fail, () => ratioToDecimal(readNumber(value as NumberInput)));
  if (read === undefined) return ZERO;
  if (checkSign(read, rule.sign, path, () => shown(value), fail))
    checkRange(read, rule, path, fail);
  return read;
}

function checkRange(value: Decimal, { least, most }: NumberRule, path: FieldPath, fail: Fail) {
  const isLow = least !== undefined && value.lt(least);
  const isHigh = most !== undefined && value.gt(most);
  if (!isLow && !isHigh) return;
  const span =
    least === undefined
      ? `at most ${most}`
      : most === undefined
        ? `at least ${least}`
        : `between ${least} and ${most}`;
  fail('OUT_OF_RANGE', path, `must be ${span}, got ${value.toString()}`, { got: value.toString() });
}

function readQuantity<D extends Dimension>(
  dimension: D,
  value: unknown,
  path: FieldPath,
  rule: QuantityRule<D>,
  fail: Fail,
): Quantity<D> {
  const standIn = () => fromSIDecimal(dimension, ZERO);
  if (value === undefined) {
    fail('REQUIRED', path, `is missing: write ${EXAMPLES[dimension]}`);
    return standIn();
  }
  const read = guarded(
    path,
    fail,
    () => toQuantity(dimension, value as QuantityInput<D>),
    dimension,
  );
  if (read === undefined) return standIn();
  const text = () => (typeof value === 'string' ? value : read.toString());
  if (checkSign(read.si, rule.sign, path, text, fail)) checkMost(read, rule, path, text, fail);
  return read;
}

function checkMost<D extends Dimension>(
  read: Quantity<D>,
  rule: QuantityRule<D>,
  path: FieldPath,
  text: () => string,
  fail: Fail,
) {
  if (rule.most === undefined || read.abs().compare(rule.most) <= 0) return;
  const most = rule.most.toString();
  const got = text();
  fail('OUT_OF_RANGE', path, `${got} is beyond ${most}: a slip of a digit or of a unit?`, {
    most,
    got,
  });
}

function checkSign(
  value: Decimal,
  sign: Sign,
  path: FieldPath,
  text: () => string,
  fail: Fail,
): boolean {
  const isBelowZero = value.isNegative() && !value.isZero();
  if (sign === 'positive' && (isBelowZero || value.isZero())) {
    fail('NOT_POSITIVE', path, `must be more than zero, got ${text()}`, { got: text() });
    return false;
  }
  if (sign === 'not-negative' && isBelowZero) {
    fail('NEGATIVE', path, `must not be negative, got ${text()}`, { got: text() });
    return false;
  }
  return true;
}

/** Runs a reading and moves its fault to the field. */
function guarded<T>(
  path: FieldPath,
  fail: Fail,
  read: () => T,
  dimension?: Dimension,
): T | undefined {
  try {
    return read();
  } catch (error) {
    if (!isSettlineError(error)) throw error;
    for (const { code, message, params } of error.issues) {
      const hint =
        dimension === undefined || code === 'OUT_OF_RANGE' ? '' : `; write ${EXAMPLES[dimension]}`;
      fail(code, path, `${message}${hint}`, params);
    }
    return undefined;
  }
}

function wrongType(value: unknown, path: FieldPath, expected: string, fail: Fail): void {
  if (value === undefined) fail('REQUIRED', path, `is missing: expected ${expected}`);
  else fail('WRONG_TYPE', path, `expected ${expected}, got ${shown(value)}`, { expected });
}
