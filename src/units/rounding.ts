import { fault } from '../errors.js';
import type { Dimension } from './catalogue.js';
import { isOneOf } from './check-options.js';
import { exactOf, fromSI, isQuantity, quantityOf, writtenAs, type Quantity } from './quantity.js';
import { multiplyRatios, signOfRatio, type Ratio } from './ratio.js';
import { roundQuotient, type Rounding } from './round-ratio.js';
import { shown } from './shown.js';

/** A rounding mode as an option. Internal. */
export const isRounding = isOneOf(['half-up', 'half-even', 'up', 'down'] satisfies Rounding[]);

/**
 * Rounds a quantity to a whole number of steps, once and exactly: `n = round(q / step)`,
 * `result = n x step`.
 *
 * @param quantity - what to round, any sign
 * @param increment - the step, same dimension, more than zero
 * @param rounding - how ties and parts are treated. Default: `half-even`
 * @returns the rounded quantity
 * @throws `WRONG_TYPE`, `DIMENSION_MISMATCH`, `INCREMENT_NOT_POSITIVE`, `UNKNOWN_CHOICE`
 * @source nist-sp811
 * @source astm-e29
 * @example
 * roundTo(length('11 31/32 in'), length('1/16 in')).to('in').toString() //=> '12'
 */
export function roundTo<D extends Dimension>(
  quantity: Quantity<D>,
  increment: Quantity<D>,
  rounding: Rounding = 'half-even',
): Quantity<D> {
  if (!isQuantity(quantity)) {
    throw fault('WRONG_TYPE', `expected a quantity to round, got ${shown(quantity)}`);
  }
  const step = stepOf(quantity, increment);
  const steps = roundQuotient(exactOf(quantity), step, checkRounding(rounding));
  return fromSI(quantity.dimension, multiplyRatios(steps, step), writtenAs(quantity));
}

/** Refuses an unknown rounding mode. */
function checkRounding(rounding: Rounding): Rounding {
  const found = isRounding(rounding);
  if (found !== undefined) throw fault(found.code, found.message, found.params, ['rounding']);
  return rounding;
}

function stepOf<D extends Dimension>(quantity: Quantity<D>, increment: Quantity<D>): Ratio {
  const step = exactOf(quantityOf(quantity.dimension, increment));
  if (signOfRatio(step) <= 0) {
    throw fault(
      'INCREMENT_NOT_POSITIVE',
      'the step is not greater than zero. Write a positive step',
    );
  }
  return step;
}
