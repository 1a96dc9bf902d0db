import type { DimensionOf, Unit, UnitOf } from './catalogue.js';
import type { Decimal } from './decimal.js';
import { anyEntryOf, entryOf } from './find-unit.js';
import { multiplyRatios, quotientToDecimal } from './ratio.js';
import { readNumber, type NumberInput } from './read-number.js';

/**
 * Converts a number from one unit to another of the same dimension: `value x from / to`, exact if
 * the result ends within 40 digits.
 *
 * @param value - a number, digits as text or a decimal
 * @param from - unit symbol
 * @param to - unit symbol of the same dimension; another dimension does not compile
 * @returns the value in `to`, 40 digits
 * @throws `UNIT_UNKNOWN`, `UNIT_AMBIGUOUS`, `DIMENSION_MISMATCH`, `NOT_FINITE`, `NOT_A_NUMBER`,
 *   `OUT_OF_RANGE`, `WRONG_TYPE`
 * @source nist-hb44
 * @example
 * convert(1, 'in', 'mm').toString() //=> '25.4'
 * convert('27', 'ft3', 'yd3').toString() //=> '1'
 */
export function convert<U extends Unit>(
  value: NumberInput,
  from: U,
  to: UnitOf<DimensionOf<NoInfer<U>>>,
): Decimal {
  const source = anyEntryOf(from);
  const target = entryOf(source.dimension, to);
  return quotientToDecimal(multiplyRatios(readNumber(value), source.exact), target.exact);
}
