import { attempt } from '../attempt.js';
import type { FieldPath } from '../errors.js';
import type { About } from './about.js';
import { isPlain } from './plain.js';
import { makeReader, type Reader } from './reader.js';
import { refuseUnknown } from './unknown-field.js';

/** How one field of an input object is read. Internal. */
export interface Field<T> {
  /** Reads the value; after a fault it may return any stand-in. */
  readonly read: (reader: Reader, value: unknown, path: FieldPath) => T;
  /** What the field takes, as data: for schemas and pages. */
  readonly about?: About;
  readonly isOptional?: never;
}

/** A field that may be left out; the fallback then replaces it. Internal. */
export interface OptionalField<T> {
  readonly read: (reader: Reader, value: unknown, path: FieldPath) => T;
  readonly about?: About;
  readonly isOptional: true;
  readonly fallback: T;
}

/** The fields of an input object, each with its way of being read. Internal. */
export type Shape = Readonly<Record<string, Field<unknown> | OptionalField<unknown>>>;

/** The values of a shape's fields after reading. Internal. */
export type Values<S extends Shape> = {
  readonly [K in keyof S]: S[K] extends { readonly read: (...given: never[]) => infer T }
    ? T
    : never;
};

/**
 * Checks fields against each other. A field that could not be read is undefined, and so is an
 * optional one that was left out ({@link isLeftOut} tells them apart). Check only what is there.
 * Internal.
 */
export type Check<S extends Shape> = (
  reader: Reader,
  values: Partial<Values<S>>,
  path: FieldPath,
  /** The object as given, to tell a field that was left out from one that could not be read. */
  raw: Readonly<Record<string, unknown>>,
) => void;

/** A field for each key of an interface; optional keys have optional fields. */
type FieldsOf<I> = {
  readonly [K in keyof I]-?: undefined extends I[K] ? OptionalField<unknown> : Field<unknown>;
};

/**
 * Makes the shape of an interface. The compiler checks that it has the same fields and the same
 * optional ones. Internal.
 *
 * `const SHAPE = shapeOf<LiftsOptions>()({ thickness: quantity(THICKNESS), ... });`
 */
export const shapeOf =
  <I>() =>
  <S extends FieldsOf<I>>(
    shape: S & Readonly<Record<Exclude<keyof S, keyof I>, never>>,
  ): Readonly<S> =>
    shape;

/**
 * Reads the options of a function: every field by its shape, no unknown key, all faults at once.
 * Internal.
 *
 * @throws {@link SettlineError} with every fault
 */
export function readOptions<S extends Shape>(
  options: unknown,
  shape: S,
  check?: Check<S>,
): Values<S> {
  const reader = makeReader();
  const values = readShape(reader, options, [], shape, check);
  reader.finish();
  return values as Values<S>;
}

/** Reads an object by its shape; what could not be read is undefined. Internal. */
export function readShape<S extends Shape>(
  reader: Reader,
  value: unknown,
  path: FieldPath,
  shape: S,
  check?: Check<S>,
): Partial<Values<S>> {
  const before = reader.faults();
  const values: Record<string, unknown> = {};
  if (value === undefined) {
    reader.fail('REQUIRED', path, `missing. Write an object with ${fieldsIn(shape)}`);
    return values as Partial<Values<S>>;
  }
  const raw = reader.object(value, path);
  // a value that is not an object has no missing fields
  if (reader.faults() > before) return values as Partial<Values<S>>;
  const misspelt = refuseUnknown(reader, raw, path, shape);
  for (const key in shape) {
    const field = shape[key];
    if (field === undefined || (misspelt.has(key) && raw[key] === undefined)) continue;
    const given = Object.hasOwn(raw, key) ? raw[key] : undefined;
    if (given === undefined && field.isOptional === true) {
      values[key] = field.fallback;
      continue;
    }
    if (given === null && field.isOptional === true) {
      const nothing = readNull(reader, field, [...path, key]);
      if (nothing !== undefined) values[key] = nothing;
      continue;
    }
    const read = readPart(reader, field, given, [...path, key]);
    if (read !== undefined) values[key] = read;
  }
  check?.(reader, values as Partial<Values<S>>, path, withMisspelt(raw, misspelt));
  return values as Partial<Values<S>>;
}

/** Refuses null in a field that may be left out: what it takes, and that it may be left out. */
function readNull(reader: Reader, field: OptionalField<unknown>, path: FieldPath): unknown {
  const own = makeReader();
  const outcome = attempt(() => {
    const read = field.read(own, null, path);
    own.finish();
    return read;
  });
  if (outcome.ok) return outcome.value;
  for (const { code, message, params } of outcome.errors) {
    const joint = message.includes('. Write ') ? ', or leave it out' : '. Leave it out';
    reader.fail(code, path, `${message}${joint}`, params);
  }
  return undefined;
}

/** Fields that a message lists. */
const MOST_LISTED = 8;

/** What an object is made of: the fields that it needs, or else those that it may have. */
function fieldsIn(shape: Shape): string {
  const needed = Object.keys(shape).filter((key) => shape[key]?.isOptional !== true);
  if (needed.length > 0) return listed(needed);
  return `one or more of ${listed(Object.keys(shape))}`;
}

const listed = (names: readonly string[]): string =>
  `${names.slice(0, MOST_LISTED).join(', ')}${names.length > MOST_LISTED ? ' ...' : ''}`;

/**
 * The object with misspelt fields put right: they have a fault already and are not missing as well.
 */
function withMisspelt(
  raw: Readonly<Record<string, unknown>>,
  misspelt: ReadonlySet<string>,
): Readonly<Record<string, unknown>> {
  const missing = [...misspelt].filter((name) => raw[name] === undefined);
  if (missing.length === 0) return raw;
  return { ...raw, ...Object.fromEntries(missing.map((name) => [name, MISSPELT])) };
}

const MISSPELT = 'misspelt';

/** True if an optional field was left out, false if it could not be read. Internal. */
export const isLeftOut = <T extends object>(values: T, name: keyof T & string): boolean =>
  Object.hasOwn(values, name) && values[name] === undefined;

/**
 * Reads a part; undefined if it could not be read. If the reader keeps parts, an object or list
 * keeps what could be read of it. A value of another type, or a list without entries, does not
 * count as an empty one. Internal.
 */
export function readPart<T>(
  reader: Reader,
  field: Field<T> | OptionalField<T>,
  value: unknown,
  path: FieldPath,
): T | undefined {
  const before = reader.faults();
  const read = field.read(reader, value, path);
  if (reader.faults() === before) return read;
  const isObject = field.about?.kind === 'object' && isPlain(value);
  const isList = field.about?.kind === 'list' && Array.isArray(read) && read.length > 0;
  return reader.keepsParts && (isObject || isList) ? read : undefined;
}
