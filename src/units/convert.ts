import { fault } from '../errors.js';
import type { DimensionOf, Unit, UnitOf } from './catalogue.js';
import type { Decimal } from './decimal.js';
import { unitEntry, type UnitEntry } from './engine.js';
import { multiplyRatios, quotientToDecimal } from './ratio.js';
import { readNumber, type NumberInput } from './read-number.js';

/**
 * Converts a number from one unit to another of the same dimension: `value x from / to`, exact where
 * the result ends within 40 digits.
 *
 * @param value - a number, digits as text or a decimal
 * @param from - unit symbol
 * @param to - unit symbol of the same dimension; another dimension does not compile
 * @returns the value in `to`, 40 digits
 * @throws `UNIT_UNKNOWN`, `DIMENSION_MISMATCH`, `NOT_FINITE`, `NOT_A_NUMBER`
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
  const source = known(from);
  const target = known(to);
  if (source.dimension !== target.dimension) {
    throw fault(
      'DIMENSION_MISMATCH',
      `cannot convert ${source.dimension} (${from}) to ${target.dimension} (${to})`,
      { from, to },
    );
  }
  return quotientToDecimal(multiplyRatios(readNumber(value), source.exact), target.exact);
}

function known(symbol: string): UnitEntry {
  const entry = unitEntry(symbol);
  if (entry === undefined) {
    const which = /^tons?$/i.test(symbol) ? 'UNIT_AMBIGUOUS' : 'UNIT_UNKNOWN';
    throw fault(which, `${JSON.stringify(symbol)} is no unit of the catalogue`, { unit: symbol });
  }
  return entry;
}
