import type { FieldPath } from '../errors.js';
import { unknownField } from '../nearest-name.js';
import type { Reader } from './reader.js';

/**
 * Refuses unknown keys. Returns the known names that were meant: those are misspelt, not missing.
 * Internal.
 */
export function refuseUnknown(
  reader: Pick<Reader, 'fail'>,
  fields: Readonly<Record<string, unknown>>,
  path: FieldPath,
  known: Readonly<Record<string, unknown>>,
): ReadonlySet<string> {
  if (isResult(fields)) return NONE;
  let all = NONE;
  for (const key of Object.keys(fields)) {
    if (Object.hasOwn(known, key)) continue;
    const names = Object.keys(known);
    const missing = names.filter((name) => fields[name] === undefined && isNeeded(known[name]));
    const { message, meant, params } = unknownField(key, names, missing);
    reader.fail('UNKNOWN_FIELD', [...path, key], message, params);
    if (meant !== undefined) all = new Set([...all, meant]);
  }
  return all;
}

/** True for a field of a shape that may not be left out. */
const isNeeded = (field: unknown): boolean =>
  typeof field === 'object' && field !== null && !('isOptional' in field);

const NONE: ReadonlySet<string> = new Set();

/** True for a result of the library, which may have more fields than an input. */
const isResult = (fields: object): boolean =>
  Object.getOwnPropertyDescriptor(fields, 'working')?.enumerable === false;
