import { fault } from '../errors.js';
import { ONE, type Decimal } from './decimal.js';
import { exactOf, fromSI, isQuantity, type Length, type Quantity } from './quantity.js';
import type { Dimension } from './catalogue.js';
import { divideRatios, floorRatio, multiplyRatios, ratio, type Ratio } from './ratio.js';

/**
 * How a value between two steps is rounded. Signs do not matter: `up` is away from zero, `down`
 * toward zero, and a tie goes away from zero (`half-up`) or to the even step (`half-even`, the
 * default; NIST SP 811 B.7.1 and ASTM E29 break ties so).
 */
export type Rounding = 'half-up' | 'half-even' | 'up' | 'down';

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
  const steps = roundRatio(divideRatios(exactOf(quantity), step), rounding);
  return fromSI(quantity.dimension, multiplyRatios(ratio(steps), step));
}

/** Whole number of steps in a quantity, rounded. Internal. */
export function stepsIn(quantity: Length, increment: Length, rounding: Rounding): Decimal {
  return roundRatio(divideRatios(exactOf(quantity), stepOf(quantity, increment)), rounding);
}

function stepOf<D extends Dimension>(quantity: Quantity<D>, increment: Quantity<D>): Ratio {
  if (!isQuantity(increment) || increment.dimension !== quantity.dimension) {
    throw fault('DIMENSION_MISMATCH', `the step must be a ${quantity.dimension}`);
  }
  const step = exactOf(increment);
  if (!step.n.gt(0)) {
    throw fault('INCREMENT_NOT_POSITIVE', `the step must be more than zero`);
  }
  return step;
}

/** Rounds an exact ratio to a whole number. Internal. */
export function roundRatio(value: Ratio, rounding: Rounding): Decimal {
  if (!ROUNDINGS.includes(rounding)) {
    throw fault('UNKNOWN_CHOICE', `rounding must be one of ${ROUNDINGS.join(', ')}`);
  }
  if (value.n.isNegative()) {
    const magnitude = roundRatio({ n: value.n.neg(), d: value.d }, rounding);
    return magnitude.isZero() ? magnitude : magnitude.neg();
  }
  const whole = floorRatio(value);
  const rest = value.n.minus(whole.times(value.d));
  return rest.isZero() || !goesUp(whole, rest, value.d, rounding) ? whole : whole.plus(ONE);
}

function goesUp(whole: Decimal, rest: Decimal, d: Decimal, rounding: Rounding): boolean {
  if (rounding === 'up') return true;
  if (rounding === 'down') return false;
  const order = rest.plus(rest).cmp(d);
  if (order !== 0) return order > 0;
  return rounding === 'half-up' || !whole.mod(2).isZero();
}
