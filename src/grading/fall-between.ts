import { makeReader } from '../input/reader.js';
import { max } from '../units/aggregate.js';
import type { LengthInput, SlopeInput } from '../units/construct.js';
import { fromSI, type Length, type Slope } from '../units/quantity.js';
import { ZERO_RATIO } from '../units/ratio.js';
import { given, withWorking, type Worked } from '../working.js';
import { DISTANCE, ELEVATION, SLOPE_LIMIT } from './limits.js';
import { slopeBetween } from './slope-between.js';

/** The fall that two fixed levels leave. */
export interface FallBetween extends Worked {
  /** From start to end, + falling. */
  readonly fall: Slope;
  /** Start less end: negative where it rises. */
  readonly drop: Length;
  /** Drop that the least fall asks for. */
  readonly neededDrop: Length;
  /** What the drop lacks: lower the end, or raise the start, by this. Zero where it is enough. */
  readonly shortfall: Length;
  readonly isEnough: boolean;
}

/**
 * The fall between two fixed levels, such as a slab and a kerb, and what it lacks:
 * `g = (z1 - z2) / L`, `shortfall = max(0, g0 L - (z1 - z2))`. To know it early is the use of it.
 *
 * @param options.from - elevation that water leaves [length]
 * @param options.to - elevation that it should reach [length]
 * @param options.distance - between them in plan [length]
 * @param options.least - least fall [slope], for instance 2 %
 * @returns fall [slope, + falling], drop, needed drop and shortfall [length], and whether it is enough
 * @throws `NOT_POSITIVE`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const drive = fallBetween({ from: '100 m', to: '99.8 m', distance: '14.5 m', least: '2%' });
 * drive.fall.to('percent').toFixed(2) //=> '1.38'
 * drive.shortfall.to('mm').toString() //=> '90'
 */
export function fallBetween(options: {
  readonly from: LengthInput;
  readonly to: LengthInput;
  readonly distance: LengthInput;
  readonly least: SlopeInput;
}): FallBetween {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const from = reader.quantity('length', fields['from'], ['from'], ELEVATION);
  const to = reader.quantity('length', fields['to'], ['to'], ELEVATION);
  const distance = reader.quantity('length', fields['distance'], ['distance'], DISTANCE);
  const least = reader.quantity('slope', fields['least'], ['least'], SLOPE_LIMIT);
  reader.finish();
  const drop = from.minus(to);
  const fall = slopeBetween(drop, distance);
  const neededDrop = distance.times(least);
  const shortfall = max([NOTHING, neededDrop.minus(drop)]);
  const isEnough = shortfall.isZero();
  return withWorking({ fall, drop, neededDrop, shortfall, isEnough }, () => [
    {
      title: 'Fall between two fixed levels',
      formula: 'g = (z1 - z2) / L',
      given: [given('z1', 'from', from), given('z2', 'to', to), given('L', 'distance', distance)],
      result: given('g', 'fall (+ falling)', fall),
      source: 'derived',
    },
    {
      title: 'What the drop lacks',
      formula: 'S = max(0, g0 L - (z1 - z2))',
      given: [
        given('g0', 'least fall', least),
        given('L', 'distance', distance),
        given('z1', 'from', from),
        given('z2', 'to', to),
      ],
      result: given('S', 'shortfall', shortfall),
      source: 'derived',
    },
  ]);
}

const NOTHING = fromSI('length', ZERO_RATIO);
