import { fault } from '../errors.js';
import type { Dimension, Unit, UnitOf } from './catalogue.js';
import { checkOptions, isFlag } from './check-options.js';
import { digitsText } from './digits-text.js';
import { entryOf } from './find-unit.js';
import { markOf, unitOfText } from './print-quantity.js';
import {
  exactOf,
  isQuantity,
  ownQuantity,
  writtenAs,
  type AnyQuantity,
  type Quantity,
} from './quantity.js';
import { isSmall, multiplyRatios } from './ratio.js';
import { roundQuotient, type Rounding } from './round-ratio.js';
import { isRounding } from './rounding.js';
import { shown } from './shown.js';

/** How a quantity is printed. */
export interface FormatQuantityOptions<D extends Dimension> {
  /**
   * The unit to print in: a symbol of the quantity's dimension. Default: as the quantity was written;
   * slopes in percent, angles in degrees, what was calculated from nothing written in the SI unit.
   */
  readonly as?: UnitOf<D>;
  /** Decimal places, 0 to 12. Default: 2. */
  readonly places?: number;
  /** How a value between two steps is rounded. Default: `half-even`. */
  readonly rounding?: Rounding;
  /** True to print a decimal comma. Default: false. */
  readonly decimalComma?: boolean;
}

const MOST_PLACES = 12;

const CHECKS = {
  as: () => undefined,
  places: (value: unknown) =>
    Number.isInteger(value) && Number(value) >= 0 && Number(value) <= MOST_PLACES
      ? undefined
      : {
          code: 'OUT_OF_RANGE' as const,
          message: `${shown(value)} decimal places are not possible. Write a whole number from 0 to ${MOST_PLACES}`,
        },
  rounding: isRounding,
  decimalComma: isFlag,
};

/**
 * Prints a quantity in a unit to a number of decimal places, rounded once from the exact value.
 *
 * @param quantity - any quantity
 * @param options - see {@link FormatQuantityOptions}
 * @returns the number and the unit's symbol: `6.54 yd3`
 * @throws `UNIT_UNKNOWN`, `DIMENSION_MISMATCH`, `OUT_OF_RANGE` for places below 0 or above 12,
 *   `UNKNOWN_CHOICE`, `UNKNOWN_FIELD`, `WRONG_TYPE`
 * @example
 * formatQuantity(volume('5 m3'), { as: 'yd3' }) //=> '6.54 yd3'
 * formatQuantity(slope('1:48'), { as: 'percent', places: 1 }) //=> '2.1%'
 * formatQuantity(mass('1200 lb').times(3)) //=> '3600.00 lb'
 */
export function formatQuantity<D extends Dimension>(
  quantity: Quantity<D>,
  options: FormatQuantityOptions<D> = {},
): string {
  if (!isQuantity(quantity)) {
    throw fault('WRONG_TYPE', `expected a quantity to print, got ${shown(quantity)}`);
  }
  checkOptions(options, CHECKS);
  const places = options.places ?? 2;
  const unit = options.as ?? usualUnit(quantity);
  const step = multiplyRatios(entryOf(quantity.dimension, unit).exact, { n: 1, d: 10 ** places });
  const rounding = options.rounding ?? 'half-even';
  const steps = roundQuotient(exactOf(quantity), step, rounding);
  const text = digitsText(steps.n, places, options.decimalComma === true ? ',' : '.');
  return `${text}${markOf(unit)}`;
}

function usualUnit(quantity: AnyQuantity): Unit {
  const written = writtenAs(ownQuantity(quantity));
  return unitOfText(quantity.dimension, written === 'ft-in' ? 'ft' : written);
}

/** Rounds up to a whole number of packs, exactly: no epsilon. Internal. */
export function wholeNumberUp<D extends Dimension>(need: Quantity<D>, pack: Quantity<D>): number {
  if (pack.isZero()) throw fault('DIVISION_BY_ZERO', 'a pack or a load of nothing');
  const packs = roundQuotient(exactOf(need), exactOf(pack), 'up');
  if (!isSmall(packs)) throw fault('CAPACITY_EXCEEDED', 'more packs than can be counted');
  return packs.n;
}
