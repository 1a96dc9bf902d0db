import { quantity } from '../input/field.js';
import { AZIMUTH, SLOPE } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import type { AngleInput, SlopeInput } from '../units/construct.js';
import { exactOf, fromSI, type Slope } from '../units/quantity.js';
import { cross, dot } from '../units/vector.js';
import { derivedStep, given, withWorking, type Worked } from '../working.js';
import { directionOf } from './azimuth.js';

/** A plane and a direction of travel. */
export interface SlopesAlongOptions {
  /** Slope along x [slope], positive if it rises with x, as `planeThrough` gives it; up to 10. */
  readonly gradeX: SlopeInput;
  /** Slope along y [slope], positive if it rises with y; up to 10 either way. */
  readonly gradeY: SlopeInput;
  /** Direction of travel [angle, clockwise from +y], up to ten turns either way. */
  readonly travel: AngleInput;
}

const OPTIONS = shapeOf<SlopesAlongOptions>()({
  gradeX: quantity(SLOPE),
  gradeY: quantity(SLOPE),
  travel: quantity(AZIMUTH),
});

/** The slopes of a plane along a direction and across it. */
export interface SlopesAlong extends Worked {
  /** Slope along the direction, positive if it rises. */
  readonly longSlope: Slope;
  /** Slope across it, positive if it rises to the left. */
  readonly crossSlope: Slope;
}

/**
 * Long slope and cross slope of a plane in one direction of travel: with u the unit vector of the
 * direction, `long = gx ux + gy uy` and `cross = gy ux - gx uy`. Exact for quarter turns, else to 40
 * digits.
 *
 * @param options - see {@link SlopesAlongOptions}
 * @returns long slope [slope, + rising] and cross slope [slope, + rising to the left]
 * @throws `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const east = slopesAlong({ gradeX: '-3%', gradeY: '1%', travel: '90 deg' });
 * east.longSlope.to('percent').toString() //=> '-3'
 * east.crossSlope.to('percent').toString() //=> '1'
 */
export function slopesAlong(options: SlopesAlongOptions): SlopesAlong {
  const { gradeX, gradeY, travel } = readOptions(options, OPTIONS);
  const direction = directionOf(travel);
  const gradient = { x: exactOf(gradeX), y: exactOf(gradeY) };
  const longSlope = fromSI('slope', dot(gradient, direction));
  const crossSlope = fromSI('slope', cross(direction, gradient));
  return withWorking({ longSlope, crossSlope }, () => {
    const known = [
      given('gx', 'grade along x', gradeX),
      given('gy', 'grade along y', gradeY),
      given('u', 'direction of travel', travel),
    ];
    return [
      derivedStep({
        title: 'Slope along the direction of travel',
        formula: 'l = gx * sin(u) + gy * cos(u)',
        given: known,
        result: given('l', 'long slope (+ rising)', longSlope),
      }),
      derivedStep({
        title: 'Slope across the direction of travel',
        formula: 'c = gy * sin(u) - gx * cos(u)',
        given: known,
        result: given('c', 'cross slope (+ rising to the left)', crossSlope),
      }),
    ];
  });
}
