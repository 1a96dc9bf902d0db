import { optional, quantity } from '../input/field.js';
import { AZIMUTH, SLOPE } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { angle, type AngleInput, type SlopeInput } from '../units/construct.js';
import { exactOf, type Angle, type Slope } from '../units/quantity.js';
import { negateRatio } from '../units/ratio.js';
import { derivedStep, given, withWorking, type Worked } from '../working.js';
import { fallOf } from './fall-of.js';

/** The slopes of a surface along a direction and across it. */
export interface CombineSlopesOptions {
  /** Slope along the direction of travel [slope], positive if it rises; up to 10 either way. */
  readonly longSlope: SlopeInput;
  /** Slope across it [slope], positive if it rises to the left; up to 10 either way. */
  readonly crossSlope: SlopeInput;
  /** Direction of travel [angle, clockwise from +y], up to ten turns either way. Default: none. */
  readonly travel?: AngleInput;
}

const OPTIONS = shapeOf<CombineSlopesOptions>()({
  longSlope: quantity(SLOPE),
  crossSlope: quantity(SLOPE),
  travel: optional(quantity(AZIMUTH)),
});

/** The steepest slope of a surface with a long slope and a cross slope. */
export interface CombinedSlope extends Worked {
  /** Steepest slope, not negative. Water runs along it. */
  readonly steepest: Slope;
  /** Downhill direction, clockwise from the direction of travel; null for a level surface. */
  readonly downhillFromTravel: Angle | null;
  /** Downhill direction, clockwise from +y; null for a level surface or without `travel`. */
  readonly downhillAzimuth: Angle | null;
  /** True for a level surface. */
  readonly isLevel: boolean;
}

/**
 * Long slope and cross slope together: `g = sqrt(l^2 + c^2)`, the direction in which water runs. 4%
 * along and 2% across make 4.47%. Rules for accessible routes limit the two separately. Drainage
 * depends on the steepest.
 *
 * @param options - see {@link CombineSlopesOptions}
 * @returns steepest slope [slope, not negative] and the downhill direction [angle, from 0 to below 360
 *   degrees]; null if both slopes are zero
 * @throws `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const walk = combineSlopes({ longSlope: '-4%', crossSlope: '2%' });
 * walk.steepest.to('percent').toFixed(2) //=> '4.47'
 * walk.downhillFromTravel?.to('deg').toFixed(1) //=> '26.6'
 */
export function combineSlopes(options: CombineSlopesOptions): CombinedSlope {
  const { longSlope, crossSlope, travel } = readOptions(options, OPTIONS);
  // x to the right of travel, y along it
  const { slope: steepest, downhillAzimuth: downhillFromTravel } = fallOf(
    negateRatio(exactOf(crossSlope)),
    exactOf(longSlope),
  );
  const isLevel = downhillFromTravel === null;
  const downhillAzimuth = isLevel || travel === undefined ? null : sum(downhillFromTravel, travel);
  return withWorking({ steepest, downhillFromTravel, downhillAzimuth, isLevel }, () => [
    derivedStep({
      title: 'Long slope and cross slope together',
      formula: 'g = sqrt(l^2 + c^2)',
      given: [given('l', 'long slope', longSlope), given('c', 'cross slope', crossSlope)],
      result: given('g', 'steepest slope', steepest),
    }),
  ]);
}

const WHOLE_TURN = angle(360, 'deg');

/** Two directions one after the other, from 0 to below a whole turn. */
function sum(first: Angle, second: Angle): Angle {
  let turned = first.plus(second);
  while (turned.isNegative()) turned = turned.plus(WHOLE_TURN);
  while (turned.compare(WHOLE_TURN) >= 0) turned = turned.minus(WHOLE_TURN);
  return turned;
}
