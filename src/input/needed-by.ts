import type { FieldPath } from '../errors.js';
import type { Reader } from './reader.js';

/** A check of a field that has no effect without another: alone it is refused. Internal. */
export const neededBy =
  (other: string, missing: string) =>
  (
    reader: Reader,
    _read: unknown,
    path: FieldPath,
    fields: Readonly<Record<string, unknown>>,
  ): void => {
    if (fields[other] === undefined || fields[missing] !== undefined) return;
    reader.fail('REQUIRED', [...path, missing], `missing. ${other} needs it`, { needs: other });
  };

/** A verdict needs a tolerance: an uncertainty alone has no effect. Internal. */
export const toleranceForUncertainty = neededBy('uncertainty', 'tolerance');
