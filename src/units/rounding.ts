import { fault } from '../errors.js';
import type { Dimension } from './catalogue.js';
import { exactOf, fromSI, isQuantity, type Length, type Quantity } from './quantity.js';
import { multiplyRatios, signOfRatio, type Ratio } from './ratio.js';
import { roundQuotient, type Rounding } from './round-ratio.js';

const ROUNDINGS: readonly Rounding[] = ['half-up', 'half-even', 'up', 'down'];

/**
 * Rounds a quantity to a whole number of steps, once and exactly: `n = round(q / step)`,
 * `result = n x step`.
 *
 * @param quantity - what to round, any sign
 * @param increment - the step, same dimension, more than zero
 * @param rounding - how ties and parts are treated, default `half-even`
 * @returns the rounded quantity
 * @throws `INCREMENT_NOT_POSITIVE`, `DIMENSION_MISMATCH`, `UNKNOWN_CHOICE`
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
  const step = stepOf(quantity, increment);
  const steps = roundQuotient(exactOf(quantity), step, checkRounding(rounding));
  return fromSI(quantity.dimension, multiplyRatios(steps, step));
}

/** Whole number of steps in a length, rounded. Internal. */
export function stepsIn(quantity: Length, increment: Length, rounding: Rounding): Ratio {
  return roundQuotient(exactOf(quantity), stepOf(quantity, increment), checkRounding(rounding));
}

/** Makes sure that a rounding mode is one. Internal. */
export function checkRounding(rounding: Rounding): Rounding {
  if (ROUNDINGS.includes(rounding)) return rounding;
  throw fault('UNKNOWN_CHOICE', `rounding must be one of ${ROUNDINGS.join(', ')}`);
}

function stepOf<D extends Dimension>(quantity: Quantity<D>, increment: Quantity<D>): Ratio {
  if (!isQuantity(increment) || increment.dimension !== quantity.dimension) {
    throw fault('DIMENSION_MISMATCH', `the step must be a ${quantity.dimension}`);
  }
  const step = exactOf(increment);
  if (signOfRatio(step) <= 0) {
    throw fault('INCREMENT_NOT_POSITIVE', `the step must be more than zero`);
  }
  return step;
}
