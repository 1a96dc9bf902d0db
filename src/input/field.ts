import type { FieldPath } from '../errors.js';
import type { Dimension } from '../units/catalogue.js';
import type { Decimal } from '../units/decimal.js';
import type { Quantity } from '../units/quantity.js';
import type { Ratio } from '../units/ratio.js';
import type { JsonSchemaPart } from './about.js';
import type { QuantityRange } from './ranges.js';
import type { NumberRule, PlainReader, Reader } from './reader.js';
import {
  readPart,
  readShape,
  type Check,
  type Field,
  type OptionalField,
  type Shape,
  type Values,
} from './shape.js';

/** A quantity within a range of the table. Internal. */
export const quantity = <D extends Dimension>(range: QuantityRange<D>): Field<Quantity<D>> => ({
  read: (reader, value, path) => reader.quantity(range.dimension, value, path, range),
  about: { kind: 'quantity', range: range as unknown as QuantityRange<Dimension> },
});

/** A number without unit, as a decimal of 40 digits. Internal. */
export const number = (rule: NumberRule): Field<Decimal> => ({
  read: (reader, value, path) => reader.number(value, path, rule),
  about: { kind: 'number', rule },
});

/** A number without unit, as a float. Internal. */
export const float = (rule: NumberRule): Field<number> => ({
  read: (reader, value, path) => reader.number(value, path, rule).toNumber(),
  about: { kind: 'number', rule },
});

/** A number without unit, exact: `'1/3'` stays a third. Internal. */
export const ratio = (rule: NumberRule): Field<Ratio> => ({
  read: (reader, value, path) => reader.ratio(value, path, rule),
  about: { kind: 'number', rule },
});

/** A whole number: passes, trucks, rows. Internal. */
export const whole = (rule: NumberRule): Field<number> => ({
  read: (reader, value, path) => readWhole(reader, value, path, rule),
  about: { kind: 'whole', rule },
});

/** Reads a whole number. Internal. */
export function readWhole(
  reader: PlainReader,
  value: unknown,
  path: FieldPath,
  rule: NumberRule,
): number {
  const before = reader.faults();
  const count = reader.number(value, path, rule);
  if (reader.faults() === before && !count.isInteger()) {
    const message = `${count.toString()} is not a whole number`;
    reader.fail('NOT_WHOLE', path, message, { got: count.toString() });
  }
  return count.toNumber();
}

/** True or false. Internal. */
export const flag: Field<boolean> = {
  read: (reader, value, path) => reader.flag(value, path),
  about: { kind: 'flag' },
};

/** One of several words. Internal. */
export const choice = <const T extends string>(choices: readonly [T, ...T[]]): Field<T> => ({
  read: (reader, value, path) => reader.choice(value, path, choices),
  about: { kind: 'choice', choices },
});

const MOST_TEXT = 200;
/** Line breaks and other control characters. */
const CONTROL = /[\u0000-\u001f\u007f\u2028\u2029]/;

/** A name or id on one line. Internal. */
export const text = (most = MOST_TEXT): Field<string> => ({
  read: (reader, value, path) => {
    const read = reader.text(value, path);
    if (read.length > most)
      reader.fail('TOO_LONG', path, `more than ${most} characters. Shorten it`, { most });
    if (CONTROL.test(read)) {
      reader.fail(
        'BAD_CHARACTER',
        path,
        'has a line break or control character. Write the name on one line',
      );
    }
    return read;
  },
  about: { kind: 'text', most },
});

/** A field that may be left out; it is then undefined, or the fallback. Internal. */
export function optional<T>(field: Field<T>): OptionalField<T | undefined>;
export function optional<T>(field: Field<T>, fallback: NoInfer<T>): OptionalField<T>;
export function optional<T>(field: Field<T>, fallback?: T): OptionalField<T | undefined> {
  return { ...field, isOptional: true, fallback };
}

/** An object with a shape, and the name of its interface if a schema needs it. Internal. */
export const object = <S extends Shape>(
  shape: S,
  check?: Check<S>,
  name?: string,
): Field<Values<S>> => ({
  // a stand-in with gaps is never used: the reader has a fault
  read: (reader, value, path) => readShape(reader, value, path, shape, check) as Values<S>,
  about: { kind: 'object', shape, name },
});

/** How many entries a list may have, and which field must differ in each. Internal. */
export interface ListRule {
  /** Default 1. */
  readonly least?: number;
  /** Default 10 000. */
  readonly most?: number;
  /** The field that no two entries share. */
  readonly unique?: string;
  /** What the entries are, in the plural: `stakes`. */
  readonly of: string;
}

const MOST_ENTRIES = 10_000;

/** A list of entries of one kind. Internal. */
export const list = <T>(item: Field<T>, rule: ListRule): Field<readonly T[]> => ({
  read: (reader, value, path) => readEntries(reader, { item, rule, value, path }),
  about: { kind: 'list', item, rule },
});

function readEntries<T>(
  reader: Reader,
  {
    item,
    rule,
    value,
    path,
  }: {
    readonly item: Field<T>;
    readonly rule: ListRule;
    readonly value: unknown;
    readonly path: FieldPath;
  },
): readonly T[] {
  const { least = 1, most = MOST_ENTRIES, unique, of } = rule;
  if (least === 0 && Array.isArray(value) && value.length === 0) return [];
  if (Array.isArray(value) && value.length > most) {
    const got = value.length;
    reader.fail('TOO_MANY', path, `${got} ${of} are more than the limit of ${most}`, { most, got });
    return [];
  }
  if (value === undefined) {
    reader.fail('REQUIRED', path, `missing. Write a list of ${of}: [ ... ]`);
    return [];
  }
  if (Array.isArray(value) && value.length === 0) {
    reader.fail('EMPTY_LIST', path, `the list is empty. Give ${least} or more ${of}`);
    return [];
  }
  const entries = reader.list(value, path);
  if (entries.length > 0 && entries.length < least) {
    const got = entries.length;
    reader.fail('TOO_FEW', path, `${counted(got, of)} given, at least ${least} needed`, {
      least,
      got,
    });
  }
  if (unique !== undefined) refuseDoubles(reader, entries, { path, unique });
  // entries with gaps are used only if the reader keeps parts: the reader has a fault
  return entries.map((entry, index) => readPart(reader, item, entry, [...path, index]) as T);
}

const counted = (count: number, of: string): string =>
  count === 1 ? `1 ${of.replace(/s$/, '')}` : `${count} ${of}`;

function refuseDoubles(
  reader: Reader,
  entries: readonly unknown[],
  { path, unique }: { readonly path: FieldPath; readonly unique: string },
): void {
  const first = new Map<string, number>();
  entries.forEach((entry, index) => {
    const id = fieldOf(entry, unique);
    if (typeof id !== 'string') return;
    const earlier = first.get(id);
    if (earlier === undefined) first.set(id, index);
    else refuseDouble(reader, { id, earlier, path: [...path, index, unique] });
  });
}

function refuseDouble(
  reader: Reader,
  {
    id,
    earlier,
    path,
  }: { readonly id: string; readonly earlier: number; readonly path: FieldPath },
): void {
  const text = JSON.stringify(id.length > 40 ? `${id.slice(0, 37)}...` : id);
  const message = `${text} is already used by entry ${earlier + 1} of this list. Give each entry its own`;
  reader.fail('DUPLICATE_ID', path, message, { id: text, earlier });
}

const fieldOf = (entry: unknown, name: string): unknown =>
  typeof entry === 'object' && entry !== null && Object.hasOwn(entry, name)
    ? (entry as Record<string, unknown>)[name]
    : undefined;

/** A field with its own reader, and its part of a schema if one is needed. Internal. */
export const custom = <T>(
  read: (reader: Reader, value: unknown, path: FieldPath) => T,
  schema?: JsonSchemaPart,
  items?: Field<unknown>,
): Field<T> => ({
  read,
  ...(schema === undefined ? {} : { about: { kind: 'custom', schema, items } }),
});
