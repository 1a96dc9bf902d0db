import { fault } from '../errors.js';
import { Decimal40 } from './decimal.js';
import { fromSIDecimal, fromUnit, quantityOf, type Angle, type Slope } from './quantity.js';
import { wholeRatio } from './ratio.js';

const UPRIGHT = fromUnit('angle', wholeRatio(90), 'deg');

/**
 * The slope of a line at an angle to the level: `slope = tan(angle)`, to 40 digits.
 *
 * @param angle - between -90 and 90 degrees, both excluded
 * @returns the slope, rise over run
 * @throws `OUT_OF_RANGE` at or beyond the vertical, `DIMENSION_MISMATCH`
 * @example
 * slopeOfAngle(angle('45 deg')).to('percent').toFixed(6) //=> '100.000000'
 */
export function slopeOfAngle(angle: Angle): Slope {
  const own = quantityOf('angle', angle);
  const size = own.abs();
  const rest = UPRIGHT.minus(size);
  if (rest.isZero() || rest.isNegative()) {
    throw fault(
      'OUT_OF_RANGE',
      'the angle is vertical or steeper. Write an angle below 90 degrees',
    );
  }
  // tan a = 1 / tan(90 deg - a): close to the vertical a tangent loses digits
  const isSteep = rest.lessThan(size);
  const tangent = Decimal40.tan((isSteep ? rest : size).si);
  const slope = fromSIDecimal('slope', isSteep ? Decimal40.div(1, tangent) : tangent);
  return own.isNegative() ? slope.negated() : slope;
}

/**
 * The angle of a slope to the level: `angle = atan(slope)`, to 40 digits. 2% is 1.146 degrees; 2
 * degrees is 3.492%.
 *
 * @returns the angle to the level, between -90 and 90 degrees
 * @throws `DIMENSION_MISMATCH`
 * @example
 * angleOfSlope(slope('2%')).to('deg').toFixed(4) //=> '1.1458'
 */
export function angleOfSlope(slope: Slope): Angle {
  return fromSIDecimal('angle', Decimal40.atan(quantityOf('slope', slope).si));
}
