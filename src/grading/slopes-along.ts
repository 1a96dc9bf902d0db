import { makeReader } from '../input/reader.js';
import type { AngleInput, SlopeInput } from '../units/construct.js';
import { exactOf, fromSI, type Slope } from '../units/quantity.js';
import { cross, dot } from '../units/vector.js';
import { given, withWorking, type Worked } from '../working.js';
import { directionOf } from './azimuth.js';
import { AZIMUTH, SLOPE } from './limits.js';

/** A plane as someone meets it who goes in one direction. */
export interface SlopesAlong extends Worked {
  /** Along the direction, + rising. */
  readonly long: Slope;
  /** Across it, + rising to the left. */
  readonly cross: Slope;
}

/**
 * Long slope and cross slope of a plane for one direction of travel: with u the unit vector of the
 * direction, `long = gx ux + gy uy` and `cross = gy ux - gx uy`. Exact for quarter turns, else to 40
 * digits.
 *
 * @param options.gradeX - slope along x [slope, + rising], as `planeThrough` gives it
 * @param options.gradeY - slope along y [slope, + rising]
 * @param options.travel - direction of travel [angle, clockwise from +y]
 * @returns long slope [slope, + rising] and cross slope [slope, + rising to the left]
 * @throws `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const east = slopesAlong({ gradeX: '-3%', gradeY: '1%', travel: '90 deg' });
 * east.long.to('percent').toString() //=> '-3'
 * east.cross.to('percent').toString() //=> '1'
 */
export function slopesAlong(options: {
  readonly gradeX: SlopeInput;
  readonly gradeY: SlopeInput;
  readonly travel: AngleInput;
}): SlopesAlong {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const gradeX = reader.quantity('slope', fields['gradeX'], ['gradeX'], SLOPE);
  const gradeY = reader.quantity('slope', fields['gradeY'], ['gradeY'], SLOPE);
  const travel = reader.quantity('angle', fields['travel'], ['travel'], AZIMUTH);
  reader.finish();
  const direction = directionOf(travel);
  const gradient = { x: exactOf(gradeX), y: exactOf(gradeY) };
  const long = fromSI('slope', dot(gradient, direction));
  const across = fromSI('slope', cross(direction, gradient));
  return withWorking({ long, cross: across }, () => {
    const known = [
      given('gx', 'grade along x', gradeX),
      given('gy', 'grade along y', gradeY),
      given('u', 'direction of travel', travel),
    ];
    return [
      {
        title: 'Slope along the direction of travel',
        formula: 'l = gx sin(u) + gy cos(u)',
        given: known,
        result: given('l', 'long slope (+ rising)', long),
        source: 'derived',
      },
      {
        title: 'Slope across the direction of travel',
        formula: 'c = gy sin(u) - gx cos(u)',
        given: known,
        result: given('c', 'cross slope (+ rising to the left)', across),
        source: 'derived',
      },
    ];
  });
}
