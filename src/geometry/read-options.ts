import { fault, SettlineError, type FieldPath, type Issue } from '../errors.js';
import { unknownField } from '../nearest-name.js';

/** Reads the fields of an options object and refuses any that are not listed. Internal. */
export function readOptions(
  options: unknown,
  known: readonly string[],
  path: FieldPath = [],
): Readonly<Record<string, unknown>> {
  if (typeof options !== 'object' || options === null || isList(options)) {
    throw fault('WRONG_TYPE', `expected an object with ${known.join(', ')}`, {}, path);
  }
  const [first, ...rest] = Object.keys(options).flatMap((key): Issue[] => {
    if (known.includes(key)) return [];
    const { message, params } = unknownField(key, known);
    return [{ path: [...path, key], code: 'UNKNOWN_FIELD', message, params }];
  });
  if (first !== undefined) throw new SettlineError([first, ...rest]);
  return options as Readonly<Record<string, unknown>>;
}

const isList = (value: object): boolean => Array.isArray(value) || ArrayBuffer.isView(value);

/** Reads a finite number from a field. Internal. */
export function readNumber(value: unknown, path: FieldPath): number {
  if (value === undefined) throw fault('REQUIRED', 'missing. Write a number', {}, path);
  if (typeof value !== 'number') throw fault('WRONG_TYPE', 'expected a number', {}, path);
  if (!Number.isFinite(value)) {
    throw fault('NOT_FINITE', `${value} is not a number to calculate with`, {}, path);
  }
  return value;
}
