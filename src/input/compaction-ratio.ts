import type { FieldPath } from '../errors.js';
import { ONE, type Decimal } from '../units/decimal.js';
import { COMPACTED_PER_LOOSE } from './ranges.js';
import type { Reader } from './reader.js';
import type { Field } from './shape.js';

/**
 * Reads compacted over loose thickness or volume, 0.5 to 1. Above 1 the usual mistake is loose over
 * compacted. Internal.
 */
export function readCompactedPerLoose(reader: Reader, value: unknown, path: FieldPath): Decimal {
  const { least, most, example } = COMPACTED_PER_LOOSE;
  const before = reader.faults();
  const ratio = reader.number(value, path, { sign: 'any', example });
  if (reader.faults() > before) return ONE;
  if (ratio.gte(least) && ratio.lte(most)) return ratio;
  const got = ratio.toString();
  const message = `${got} is outside ${least} to ${most}. Write compacted over loose: 4 in loose that compacts to 3.2 in is 0.8`;
  reader.fail('OUT_OF_RANGE', path, message, { got });
  return ONE;
}

/** A ratio of compacted to loose thickness or volume. Internal. */
export const compactedPerLoose: Field<Decimal> = {
  read: readCompactedPerLoose,
  about: { kind: 'number', rule: COMPACTED_PER_LOOSE },
};
