import type { FieldPath } from '../errors.js';
import { list } from './field.js';
import type { Reader } from './reader.js';
import type { Field } from './shape.js';

/** One value for all, or one for each. Internal. */
export interface OneOrMany<T> {
  /** Null if each has its own. */
  readonly one: T | null;
  readonly many: readonly T[];
}

/**
 * A field that takes one value for all, or a list; `of` names its values in the plural. Internal.
 */
export const oneOrMany = <T>(item: Field<T>, of: string): Field<OneOrMany<T>> => ({
  read: (reader, value, path) =>
    Array.isArray(value)
      ? { one: null, many: list(item, { of }).read(reader, value, path) }
      : { one: item.read(reader, value, path), many: [] },
});

/** One value for each, `count` in all. Internal. */
export const forEachOf = <T>({ one, many }: OneOrMany<T>, count: number): readonly T[] =>
  one === null ? many : Array.from({ length: count }, () => one);

/** Refuses a list that does not have one value for each: `expected` of `things`. Internal. */
export function refuseMismatch(
  reader: Reader,
  { one, many }: OneOrMany<unknown>,
  { path, of, expected, things }: Mismatch,
): void {
  if (one !== null || many.length === expected) return;
  const got = many.length;
  const message = `${got} ${of} for ${expected} ${things}. Give one for each, or one for all`;
  reader.fail('COUNT_MISMATCH', path, message, { expected, got });
}

interface Mismatch {
  readonly path: FieldPath;
  readonly of: string;
  readonly expected: number;
  readonly things: string;
}
