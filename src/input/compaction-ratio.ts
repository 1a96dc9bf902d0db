import type { FieldPath } from '../errors.js';
import type { Decimal } from '../units/decimal.js';
import {
  compareRatios,
  exactDecimal,
  ONE_RATIO,
  ratioToDecimal,
  type Ratio,
} from '../units/ratio.js';
import { readNumber } from '../units/read-number.js';
import { COMPACTED_PER_LOOSE } from './ranges.js';
import type { Reader } from './reader.js';
import type { Field } from './shape.js';

/**
 * Reads compacted over loose thickness or volume, 0.5 to 1. Above 1 the usual mistake is loose over
 * compacted. Internal.
 */
export function readCompactedPerLoose(reader: Reader, value: unknown, path: FieldPath): Ratio {
  const { least, most, example } = COMPACTED_PER_LOOSE;
  const before = reader.faults();
  const ratio = reader.ratio(value, path, { sign: 'any', example });
  if (reader.faults() > before) return ONE_RATIO;
  const isLow = compareRatios(ratio, readNumber(least)) < 0;
  if (!isLow && compareRatios(ratio, readNumber(most)) <= 0) return ratio;
  const got = ratioToDecimal(ratio).toString();
  const message = `${got} is outside ${least} to ${most}. Write compacted over loose: 4 in loose that compacts to 3.2 in is 0.8`;
  reader.fail('OUT_OF_RANGE', path, message, { got });
  return ONE_RATIO;
}

/** A ratio of compacted to loose thickness or volume, exact. Internal. */
export const exactCompactedPerLoose: Field<Ratio> = {
  read: readCompactedPerLoose,
  about: { kind: 'number', rule: COMPACTED_PER_LOOSE },
};

/** The same as a decimal that shows 40 digits. Internal. */
export const compactedPerLoose: Field<Decimal> = {
  read: (reader, value, path) => exactDecimal(readCompactedPerLoose(reader, value, path)),
  about: { kind: 'number', rule: COMPACTED_PER_LOOSE },
};
