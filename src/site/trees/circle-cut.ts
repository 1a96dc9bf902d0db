import { Decimal40, type Decimal } from '../../units/decimal.js';
import { PI } from '../../units/pi.js';

/**
 * Share of a circle beyond a straight line: `(acos(x) - x sqrt(1 - x^2)) / pi` with x the distance
 * of the line from the centre over the radius, negative if the centre lies beyond the line. 0 to 1,
 * good to about 38 digits. Internal.
 */
export function shareBeyond(x: Decimal): Decimal {
  if (x.gte(1)) return new Decimal40(0);
  if (x.lte(-1)) return new Decimal40(1);
  const chord = Decimal40.sqrt(new Decimal40(1).minus(x.times(x)));
  return Decimal40.acos(x).minus(new Decimal40(x).times(chord)).div(PI);
}
