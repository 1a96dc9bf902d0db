import { fault } from '../errors.js';
import type { Dimension, UnitOf } from './catalogue.js';
import { ONE, Wide } from './decimal.js';
import { entryOf, exactOf, isQuantity, type Quantity } from './quantity.js';
import { divideRatios, multiplyRatios, ratio } from './ratio.js';
import { roundRatio, type Rounding } from './rounding.js';

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
  const { n, d } = entryOf(quantity.dimension, options.as);
  const scale = Wide.pow(10, places);
  const scaled = multiplyRatios(divideRatios(exactOf(quantity), { n, d }), { n: scale, d: ONE });
  const steps = roundRatio(scaled, options.rounding ?? 'half-even');
  const text = Wide.div(steps, scale).toFixed(places);
  const symbol = options.as === 'percent' ? '%' : options.as;
  return `${options.decimalComma === true ? text.replace('.', ',') : text} ${symbol}`;
}

/** Rounds up to a whole number of packs, exactly: no epsilon. Internal. */
export function wholeNumberUp<D extends Dimension>(need: Quantity<D>, pack: Quantity<D>): number {
  const packs = roundRatio(divideRatios(exactOf(need), exactOf(pack)), 'up').toNumber();
  if (!Number.isSafeInteger(packs))
    throw fault('CAPACITY_EXCEEDED', 'more packs than can be counted');
  return packs;
}

/** A decimal number as an exact ratio. Internal. */
export const decimalRatio = (value: string | number) => ratio(new Wide(value));
