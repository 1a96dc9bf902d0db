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
  const params = { choices: names.join(', ') };
  if (found === undefined) {
    reader.fail('REQUIRED', path, `missing. Give ${inWords(names)}`, params);
  } else if (given.length > 1) {
    reader.fail('CONFLICTING_FIELDS', path, `give only one of ${given.join(' and ')}`, params);
  }
  return found;
}

const inWords = (names: readonly string[]): string =>
  [names.slice(0, -1).join(', '), ...names.slice(-1)].join(' or ');
