import { quantity } from '../input/field.js';
import { DISTANCE, ELEVATION, SLOPE_OF_SOME } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import type { LengthInput, SlopeInput } from '../units/construct.js';
import type { Length, Slope } from '../units/quantity.js';
import { given, withWorking, type Worked } from '../working.js';
import { shortfallOf } from './shortfall.js';
import { slopeBetween } from './slope-between.js';

/** Two fixed levels, and the fall that is needed between them. */
export interface FallBetweenOptions {
  /** Elevation that water leaves [length], up to 10 km either way. */
  readonly from: LengthInput;
  /** Elevation that water should reach [length], up to 10 km either way. */
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

/** The fall that two fixed levels leave, and what it lacks. */
export interface FallBetween extends Worked {
  /** From start to end, positive where it falls. */
  readonly fall: Slope;
  /** Start less end; negative where it rises. */
  readonly drop: Length;
  /** Drop that the minimum fall needs over the distance. */
  readonly neededDrop: Length;
  /** Drop less needed drop; negative where it is not enough. */
  readonly margin: Length;
  /** By how much to lower the end, or raise the start; 0 where the drop is enough. */
  readonly shortfall: Length;
  /** True where the drop is enough. */
  readonly isEnough: boolean;
}

/**
 * The fall between two fixed levels, such as a slab and a kerb, and what it lacks:
 * `g = (z1 - z2) / L`, `margin = (z1 - z2) - g0 L`, `shortfall = max(0, -margin)`. Find out before
 * anything is dug.
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
    {
      title: 'Fall between two fixed levels',
      formula: 'g = (z1 - z2) / L',
      given: [given('z1', 'from', from), given('z2', 'to', to), given('L', 'distance', distance)],
      result: given('g', 'fall (+ falling)', fall),
      source: 'derived',
    },
    {
      title: 'Drop that is lacking',
      formula: 'S = max(0, g0 L - (z1 - z2))',
      given: [
        given('g0', 'minimum fall', minimumFall),
        given('L', 'distance', distance),
        given('z1', 'from', from),
        given('z2', 'to', to),
      ],
      result: given('S', 'shortfall', shortfall),
      source: 'derived',
    },
  ]);
}
