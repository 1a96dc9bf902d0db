import type { FieldPath } from './errors.js';
import type { Reader } from './input.js';
import { ONE, type Decimal } from './units/decimal.js';

const LEAST = 0.5;

/**
 * Reads a ratio of compacted to loose thickness or volume: 0.5 to 1. A ratio above 1 is the usual
 * slip of giving loose over compacted. Internal.
 */
export function readCompactedPerLoose(reader: Reader, value: unknown, path: FieldPath): Decimal {
  const ratio = reader.number(value, path, { sign: 'any' });
  if (value === undefined || (ratio.gte(LEAST) && ratio.lte(1))) return ratio.gt(0) ? ratio : ONE;
  const hint = ratio.gt(1) ? '; is it loose per compacted?' : '';
  reader.fail(
    'RATIO_OUT_OF_RANGE',
    path,
    `compacted over loose must be between ${LEAST} and 1, got ${ratio.toString()}${hint}`,
    { got: ratio.toString() },
  );
  return ONE;
}
