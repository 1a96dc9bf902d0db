import { SettlineError, type ErrorCode, type FieldPath, type Issue } from '../errors.js';
import type { Dimension } from '../units/catalogue.js';
import type { Decimal } from '../units/decimal.js';
import type { Quantity } from '../units/quantity.js';
import { exactDecimal, type Ratio } from '../units/ratio.js';
import { isPlain } from './plain.js';
import { readQuantity, readRuledNumber } from './read-amount.js';
import type { NumberRule, QuantityRule } from './rule.js';
import { shown } from './shown.js';

export type { NumberRule, QuantityRule, Sign } from './rule.js';

/**
 * Reads the fields of one input object and gathers every fault, to report all of them at once.
 * After a fault a stand-in is returned; {@link Reader.finish} throws before it can be used.
 */
export interface Reader {
  object(value: unknown, path: FieldPath): Readonly<Record<string, unknown>>;
  list(value: unknown, path: FieldPath): readonly unknown[];
  text(value: unknown, path: FieldPath): string;
  flag(value: unknown, path: FieldPath): boolean;
  choice<T extends string>(value: unknown, path: FieldPath, choices: readonly [T, ...T[]]): T;
  /** A number as a decimal of 40 digits. */
  number(value: unknown, path: FieldPath, rule: NumberRule): Decimal;
  /** A number with all its digits. */
  ratio(value: unknown, path: FieldPath, rule: NumberRule): Ratio;
  quantity<D extends Dimension>(
    dimension: D,
    value: unknown,
    path: FieldPath,
    rule: QuantityRule<D>,
  ): Quantity<D>;
  fail(code: ErrorCode, path: FieldPath, message: string, params?: Issue['params']): void;
  /** True if objects and lists with faults keep the parts that could be read. */
  readonly keepsParts: boolean;
  /** Number of faults so far. Do not judge a stand-in. */
  faults(): number;
  /** Throws one {@link SettlineError} with all faults, if there are any. */
  finish(): void;
}

/** A reader of what has no unit: options of sheets, words, plain numbers. Internal. */
export type PlainReader = Omit<Reader, 'quantity'>;

/** Number of faults listed; the last entry then counts the rest. */
const MOST_FAULTS = 500;

/** Makes a reader with no faults yet. */
export function makeReader(options: { readonly keepsParts?: boolean } = {}): Reader {
  const reader = makePlainReader(options);
  const { fail } = reader;
  // a copy of so many functions would take longer than the reading of most inputs
  return Object.assign<PlainReader, Pick<Reader, 'quantity'>>(reader, {
    quantity: (dimension, value, path, rule) => readQuantity(dimension, value, path, rule, fail),
  });
}

/** The same without quantities, and without all that reads them. Internal. */
export function makePlainReader({ keepsParts = false } = {}): PlainReader {
  const issues: Issue[] = [];
  let count = 0;
  const fail: Reader['fail'] = (code, path, message, params = {}) => {
    count += 1;
    if (count > MOST_FAULTS) return;
    issues.push(Object.freeze({ path: Object.freeze([...path]), code, message, params }));
  };
  return {
    fail,
    keepsParts,
    object: (value, path) => readObject(value, path, fail),
    list: (value, path) => readList(value, path, fail),
    text: (value, path) => readText(value, path, fail),
    flag: (value, path) => readFlag(value, path, fail),
    choice: (value, path, choices) => readChoice(value, path, choices, fail),
    number: (value, path, rule) => exactDecimal(readRuledNumber(value, path, rule, fail)),
    ratio: (value, path, rule) => readRuledNumber(value, path, rule, fail),
    faults: () => count,
    finish() {
      const [first, ...rest] = issues;
      if (first === undefined) return;
      if (count > MOST_FAULTS) rest.push(moreFaults(count - MOST_FAULTS));
      throw new SettlineError([first, ...rest]);
    },
  };
}

type Fail = Reader['fail'];

const moreFaults = (count: number): Issue =>
  Object.freeze({
    path: [],
    code: 'MORE_FAULTS',
    message: `${count} more ${count === 1 ? 'fault is' : 'faults are'} not listed`,
    params: { count },
  });

function readObject(
  value: unknown,
  path: FieldPath,
  fail: Fail,
): Readonly<Record<string, unknown>> {
  if (isPlain(value)) return value;
  wrongType(value, path, 'an object { ... }', fail);
  return {};
}

function readList(value: unknown, path: FieldPath, fail: Fail): readonly unknown[] {
  if (!Array.isArray(value)) {
    wrongType(value, path, 'a list [ ... ]', fail);
    return [];
  }
  if (value.length === 0) fail('EMPTY_LIST', path, 'the list is empty. Give one entry or more');
  const hole = firstHole(value);
  if (hole < 0) return value;
  fail('REQUIRED', [...path, hole], 'missing: the list has a gap here');
  return [];
}

/** The first index at which a list has a gap; -1 for none. Stops there, however long the list. */
function firstHole(list: readonly unknown[]): number {
  for (let index = 0; index < list.length; index += 1) {
    if (list[index] === undefined) return index;
  }
  return -1;
}

function readText(value: unknown, path: FieldPath, fail: Fail): string {
  if (typeof value === 'string' && value.trim() !== '') return value;
  if (typeof value === 'string') fail('EMPTY', path, 'the text is empty. Fill it in');
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
  if (value === undefined) fail('REQUIRED', path, `missing. Choose one of ${list}`);
  else fail('UNKNOWN_CHOICE', path, `${shown(value)} is not one of ${list}`, { choices: list });
  return choices[0];
}

function wrongType(value: unknown, path: FieldPath, expected: string, fail: Fail): void {
  if (value === undefined) fail('REQUIRED', path, `missing. Write ${expected}`);
  else fail('WRONG_TYPE', path, `expected ${expected}, got ${shown(value)}`, { expected });
}
