import type { FieldPath } from '../errors.js';
import type { Reader } from './reader.js';

/** Fields as they were given. */
type Fields = Readonly<Record<string, unknown>>;

/** Two fields that go together: one alone is refused. Internal. */
export function bothOrNeither(
  reader: Reader,
  fields: Fields,
  [first, second]: readonly [string, string],
  path: FieldPath,
): void {
  neededBy(first, second)(reader, null, path, fields);
  neededBy(second, first)(reader, null, path, fields);
}

/** Refuses a field that has no effect because another, which it needs, is missing. Internal. */
export const neededBy =
  (other: string, missing: string) =>
  (reader: Reader, _read: unknown, path: FieldPath, fields: Fields): void => {
    if (fields[other] === undefined || fields[missing] !== undefined) return;
    reader.fail('REQUIRED', [...path, missing], `missing. ${other} needs it`, { needs: other });
  };

/** A verdict needs a tolerance: an uncertainty alone has no effect. Internal. */
export const toleranceForUncertainty = neededBy('uncertainty', 'tolerance');
