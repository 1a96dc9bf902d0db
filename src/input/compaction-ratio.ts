import type { FieldPath } from '../errors.js';
import { ONE, type Decimal } from '../units/decimal.js';
import { COMPACTED_PER_LOOSE } from './ranges.js';
import type { Reader } from './reader.js';
import type { Field } from './shape.js';

/**
 * Reads a ratio of compacted to loose thickness or volume: 0.5 to 1. A ratio above 1 is the usual
 * slip of giving loose over compacted. Internal.
 */
export function readCompactedPerLoose(reader: Reader, value: unknown, path: FieldPath): Decimal {
  const { least, most, example } = COMPACTED_PER_LOOSE;
  const before = reader.faults();
  const ratio = reader.number(value, path, { sign: 'any', example });
  if (reader.faults() > before) return ONE;
  if (ratio.gte(least) && ratio.lte(most)) return ratio;
  const hint = ratio.gt(1) ? '. Is it loose per compacted?' : '';
  reader.fail(
    'OUT_OF_RANGE',
    path,
    `compacted over loose must be between ${least} and ${most}, got ${ratio.toString()}${hint}`,
    { got: ratio.toString() },
  );
  return ONE;
}

/** A ratio of compacted to loose thickness or volume. Internal. */
export const compactedPerLoose: Field<Decimal> = {
  read: readCompactedPerLoose,
  about: { kind: 'number', rule: COMPACTED_PER_LOOSE },
};
