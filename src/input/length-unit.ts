import type { FieldPath } from '../errors.js';
import type { Reader } from './reader.js';
import { shown } from './shown.js';

const RULE = Object.freeze({ sign: 'any', example: '"ft" or "m"' } as const);

/**
 * Reads the unit of a set of points: a bad unit is one fault, not one for each coordinate.
 * Undefined, with a fault, if it is not a unit of length. Internal.
 */
export function readLengthUnit(
  reader: Reader,
  value: unknown,
  path: FieldPath,
): string | undefined {
  const write = `Write the unit of the points, such as ${RULE.example}`;
  if (value === undefined) {
    reader.fail('UNIT_MISSING', path, `missing. ${write}`);
    return undefined;
  }
  if (typeof value !== 'string') {
    reader.fail('WRONG_TYPE', path, `expected a unit, got ${shown(value)}. ${write}`);
    return undefined;
  }
  const before = reader.faults();
  reader.quantity('length', { value: 1, unit: value }, path, RULE);
  return reader.faults() === before ? value : undefined;
}
