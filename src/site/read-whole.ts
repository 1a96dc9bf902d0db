import type { FieldPath } from '../errors.js';
import type { Reader } from '../input/reader.js';

/** Reads a whole number of at least one, such as passes or trucks. Internal. */
export function readCount(reader: Reader, value: unknown, path: FieldPath, most: number): number {
  const count = reader.number(value, path, { sign: 'positive', most });
  if (count.isInteger()) return count.toNumber();
  reader.fail('OUT_OF_RANGE', path, `must be a whole number, got ${count.toString()}`);
  return 1;
}
