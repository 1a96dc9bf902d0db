import type { Dimension, UnitOf } from '../units/catalogue.js';
import { writtenAs, type Quantity } from '../units/quantity.js';

/** A limit with up to so many digits is printed whole, another to four. */
const MOST_DIGITS = 6;
const DIGITS = 4;
const DOWN = 1;

/**
 * A limit in the unit that a value was written in, for the message on that value: rounded down, so
 * that what is printed is within the limit. A slope as a ratio is told in percent. Internal.
 */
export function limitText<D extends Dimension>(limit: Quantity<D>, value: Quantity<D>): string {
  const written = writtenAs(value);
  if (written === undefined || written === 'ratio' || written === 'percent') {
    return limit.toString();
  }
  const unit = (written === 'ft-in' ? 'ft' : written) as UnitOf<D>;
  const whole = limit.to(unit);
  const shown = whole.precision() <= MOST_DIGITS ? whole : whole.toSignificantDigits(DIGITS, DOWN);
  return `${shown.toFixed()} ${unit}`;
}
