import { makeReader } from '../input/reader.js';
import { angle, type AngleInput, type SlopeInput } from '../units/construct.js';
import { exactOf, type Angle, type Slope } from '../units/quantity.js';
import { negateRatio } from '../units/ratio.js';
import { given, withWorking, type Worked } from '../working.js';
import { fallOf } from './fall-of.js';
import { AZIMUTH, SLOPE } from './limits.js';

/** The steepest slope of a surface with a long and a cross slope. */
export interface CombinedSlope extends Worked {
  /** Not negative: what water follows. */
  readonly steepest: Slope;
  /** The way down, clockwise from the direction of travel; null for a level surface. */
  readonly downhillFromTravel: Angle | null;
  /** The way down, clockwise from +y, where the azimuth of travel was given. */
  readonly downhillAzimuth?: Angle | null;
  readonly isLevel: boolean;
}

/**
 * Long slope and cross slope together: `g = sqrt(l^2 + c^2)`, which water follows. 4 % along and 2 %
 * across fall 4.47 %. Rules for accessible routes look at the two apart, drainage at the resultant.
 *
 * @param options.long - slope along the direction of travel [slope, + rising]
 * @param options.cross - slope across it [slope, + rising to the left]
 * @param options.travel - direction of travel [angle, clockwise from +y], if wanted
 * @returns steepest slope [slope, not negative] and the way down [angle, clockwise from travel, from 0
 *   to below 360 degrees]; null where both slopes are zero
 * @throws `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const walk = combineSlopes({ long: '-4%', cross: '2%' });
 * walk.steepest.to('percent').toFixed(2) //=> '4.47'
 * walk.downhillFromTravel?.to('deg').toFixed(1) //=> '26.6'
 */
export function combineSlopes(options: {
  readonly long: SlopeInput;
  readonly cross: SlopeInput;
  readonly travel?: AngleInput;
}): CombinedSlope {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const long = reader.quantity('slope', fields['long'], ['long'], SLOPE);
  const cross = reader.quantity('slope', fields['cross'], ['cross'], SLOPE);
  const travel =
    fields['travel'] === undefined
      ? undefined
      : reader.quantity('angle', fields['travel'], ['travel'], AZIMUTH);
  reader.finish();
  // x to the right of travel, y along it
  const { slope: steepest, downhillAzimuth: downhillFromTravel } = fallOf(
    negateRatio(exactOf(cross)),
    exactOf(long),
  );
  const azimuth =
    travel === undefined ? {} : { downhillAzimuth: turned(downhillFromTravel, travel) };
  const isLevel = downhillFromTravel === null;
  return withWorking({ steepest, downhillFromTravel, ...azimuth, isLevel }, () => [
    {
      title: 'Long slope and cross slope together',
      formula: 'g = sqrt(l^2 + c^2)',
      given: [given('l', 'long slope', long), given('c', 'cross slope', cross)],
      result: given('g', 'steepest slope', steepest),
      source: 'derived',
    },
  ]);
}

const WHOLE_TURN = angle(360, 'deg');

function turned(fromTravel: Angle | null, travel: Angle): Angle | null {
  if (fromTravel === null) return null;
  let sum = fromTravel.plus(travel);
  while (sum.isNegative()) sum = sum.plus(WHOLE_TURN);
  while (sum.compare(WHOLE_TURN) >= 0) sum = sum.minus(WHOLE_TURN);
  return sum;
}
