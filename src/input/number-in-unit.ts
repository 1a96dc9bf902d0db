import type { FieldPath } from '../errors.js';
import { lengthWord } from '../units/length-words.js';
import type { Length } from '../units/quantity.js';
import { isPlain } from './plain.js';
import type { QuantityRange } from './ranges.js';
import type { Reader } from './reader.js';
import type { QuantityRule } from './rule.js';
import { withPoint } from './with-point.js';

/** A number of a list whose unit is written once, for all of it. Internal. */
export interface NumberInUnit {
  readonly value: unknown;
  readonly unit: string;
}

/** Reads such a number as a length. Internal. */
export const readInUnit = (
  reader: Reader,
  given: NumberInUnit,
  path: FieldPath,
  rule: QuantityRule<'length'>,
): Length => reader.quantity('length', given, path, rule);

/** The rule of such a number, from the range of the length. Internal. */
export const inUnit = ({ sign, most }: QuantityRange<'length'>): QuantityRule<'length'> => ({
  sign,
  most,
  write: (given) =>
    `write a plain number, such as ${plainNumber(given) ?? '2.225'}: the unit is written once, in "unit"`,
});

const NUMBER_AND_WORD = /^\s*([+-]?\d{1,20}(?:\.\d{1,20})?)\s*([a-z]*)\s*$/i;

/** The number that was meant, if the text has a decimal comma or repeats the unit. */
function plainNumber(given: unknown): string | undefined {
  if (!isPlain(given) || typeof given['value'] !== 'string') return undefined;
  const [, digits, word = ''] =
    NUMBER_AND_WORD.exec(withPoint(given['value'])[0] ?? given['value']) ?? [];
  return word === '' || lengthWord(word) === given['unit'] ? digits : undefined;
}
