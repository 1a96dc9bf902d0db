import { Decimal40, type Decimal } from '../units/decimal.js';

const PI = Decimal40.acos(-1);

/**
 * Share of a circle beyond a straight line: `(acos(x) - x sqrt(1 - x^2)) / pi` with x the distance of
 * the line from the centre over the radius, negative where the centre lies beyond the line. 0 to 1,
 * to some 38 digits. Internal.
 */
export function shareBeyond(x: Decimal): Decimal {
  if (x.gte(1)) return new Decimal40(0);
  if (x.lte(-1)) return new Decimal40(1);
  const chord = Decimal40.sqrt(new Decimal40(1).minus(x.times(x)));
  return Decimal40.acos(x).minus(new Decimal40(x).times(chord)).div(PI);
}

/** Area of a circle over the square of its radius, to 40 digits. Internal. */
export const CIRCLE: Decimal = PI;
