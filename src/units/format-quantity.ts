import { fault } from '../errors.js';
import type { Dimension, UnitOf } from './catalogue.js';
import { entryOf } from './find-unit.js';
import { exactOf, isQuantity, type Quantity } from './quantity.js';
import { isSmall, multiplyRatios, widen } from './ratio.js';
import { roundQuotient, type Rounding } from './round-ratio.js';
import { checkRounding } from './rounding.js';

/** How a quantity is printed. */
export interface FormatQuantityOptions<D extends Dimension> {
  readonly as: UnitOf<D>;
  /** Decimal places, 0 to 12. Default 2. */
  readonly places?: number;
  /** Default `half-even`. */
  readonly rounding?: Rounding;
  /** Print a comma for the decimal point. Default false. */
  readonly decimalComma?: boolean;
}

/**
 * Prints a quantity in a unit to a number of decimal places, rounded once from the exact value.
 *
 * @throws `UNIT_UNKNOWN`, `DIMENSION_MISMATCH`, `OUT_OF_RANGE` for places below 0 or above 12
 * @example
 * formatQuantity(volume('5 m3'), { as: 'yd3' }) //=> '6.54 yd3'
 * formatQuantity(slope('1:48'), { as: 'percent', places: 1 }) //=> '2.1 %'
 */
export function formatQuantity<D extends Dimension>(
  quantity: Quantity<D>,
  options: FormatQuantityOptions<D>,
): string {
  if (!isQuantity(quantity)) throw fault('WRONG_TYPE', 'expected a quantity to print');
  const places = options.places ?? 2;
  if (!Number.isInteger(places) || places < 0 || places > 12) {
    throw fault('OUT_OF_RANGE', 'decimal places must be a whole number from 0 to 12', { places });
  }
  const step = multiplyRatios(entryOf(quantity.dimension, options.as).exact, {
    n: 1,
    d: 10 ** places,
  });
  const rounding = checkRounding(options.rounding ?? 'half-even');
  const steps = widen(roundQuotient(exactOf(quantity), step, rounding));
  const text = steps.n.div(10 ** places).toFixed(places);
  const symbol = options.as === 'percent' ? '%' : options.as;
  return `${options.decimalComma === true ? text.replace('.', ',') : text} ${symbol}`;
}

/** Rounds up to a whole number of packs, exactly: no epsilon. Internal. */
export function wholeNumberUp<D extends Dimension>(need: Quantity<D>, pack: Quantity<D>): number {
  const packs = roundQuotient(exactOf(need), exactOf(pack), 'up');
  if (!isSmall(packs)) throw fault('CAPACITY_EXCEEDED', 'more packs than can be counted');
  return packs.n;
}
