import { quantity } from '../input/field.js';
import { DISTANCE, ELEVATION, SLOPE_OF_SOME } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import type { LengthInput, SlopeInput } from '../units/construct.js';
import type { Length, Slope } from '../units/quantity.js';
import { derivedStep, given, withWorking, type Worked } from '../working.js';
import { shortfallOf } from './shortfall.js';
import { slopeBetween } from './slope-between.js';

/** Two fixed levels, and the minimum fall between them. */
export interface FallBetweenOptions {
  /** Elevation at the start, where water comes from [length], up to 10 km either way. */
  readonly from: LengthInput;
  /** Elevation at the end, where water should go [length], up to 10 km either way. */
  readonly to: LengthInput;
  /** Plan distance between them [length], more than 0 and at most 100 km. */
  readonly distance: LengthInput;
  /** Minimum fall [slope], such as 2%; more than 0 and at most 10 (rise over run). */
  readonly minimumFall: SlopeInput;
}

const OPTIONS = shapeOf<FallBetweenOptions>()({
  from: quantity(ELEVATION),
  to: quantity(ELEVATION),
  distance: quantity(DISTANCE),
  minimumFall: quantity(SLOPE_OF_SOME),
});

/** The fall between two fixed levels, compared with the minimum. */
export interface FallBetween extends Worked {
  /** Fall from start to end, positive downward. */
  readonly fall: Slope;
  /** Start less end; negative if it rises. */
  readonly drop: Length;
  /** Drop that the minimum fall requires over the distance. */
  readonly neededDrop: Length;
  /** Drop less required drop; negative if the drop is not enough. */
  readonly margin: Length;
  /** Lower the end, or raise the start, by this; 0 if the drop is enough. */
  readonly shortfall: Length;
  /** True if the drop is enough. */
  readonly isEnough: boolean;
}

/**
 * The fall between two fixed levels, such as a slab and a kerb, and its shortfall:
 * `g = (z1 - z2) / L`, `margin = (z1 - z2) - g0 L`, `shortfall = max(0, -margin)`. Check it before
 * you dig.
 *
 * @param options - see {@link FallBetweenOptions}
 * @returns fall [slope, + falling], drop, needed drop, margin and shortfall [length], and whether it is
 *   enough
 * @throws `NOT_POSITIVE`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const drive = fallBetween({ from: '100 m', to: '99.8 m', distance: '14.5 m', minimumFall: '2%' });
 * drive.fall.to('percent').toFixed(2) //=> '1.38'
 * drive.shortfall.to('mm').toString() //=> '90'
 */
export function fallBetween(options: FallBetweenOptions): FallBetween {
  const { from, to, distance, minimumFall } = readOptions(options, OPTIONS);
  const drop = from.minus(to);
  const fall = slopeBetween(drop, distance);
  const neededDrop = distance.times(minimumFall);
  const margin = drop.minus(neededDrop);
  const shortfall = shortfallOf(margin);
  const isEnough = shortfall.isZero();
  return withWorking({ fall, drop, neededDrop, margin, shortfall, isEnough }, () => [
    derivedStep({
      title: 'Fall between two fixed levels',
      formula: 'g = (z1 - z2) / L',
      given: [given('z1', 'from', from), given('z2', 'to', to), given('L', 'distance', distance)],
      result: given('g', 'fall (+ falling)', fall),
    }),
    derivedStep({
      title: 'Missing drop',
      formula: 'S = max(0, g0 * L - (z1 - z2))',
      given: [
        given('g0', 'minimum fall', minimumFall),
        given('L', 'distance', distance),
        given('z1', 'from', from),
        given('z2', 'to', to),
      ],
      result: given('S', 'shortfall', shortfall),
    }),
  ]);
}
