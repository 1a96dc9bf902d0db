import type { FieldPath } from '../errors.js';
import type { Reader } from './reader.js';

/**
 * Finds which one of some fields is given. None, or more than one, is a fault; undefined for none.
 * Internal.
 */
export function exactlyOne<T extends string>(
  reader: Reader,
  fields: Readonly<Record<string, unknown>>,
  names: readonly [T, ...T[]],
  path: FieldPath,
): T | undefined {
  const given = names.filter((name) => fields[name] !== undefined);
  const [found] = given;
  const list = names.join(', ');
  if (found === undefined) reader.fail('REQUIRED', path, `is missing: give one of ${list}`);
  else if (given.length > 1) {
    reader.fail('ONE_OF', path, `give only one of ${list}, got ${given.join(' and ')}`, {
      choices: list,
    });
  }
  return found;
}
