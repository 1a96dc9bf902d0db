import { fault } from '../errors.js';
import { optional, quantity } from '../input/field.js';
import { RISE, SLOPE_OR_NONE } from '../input/ranges.js';
import { readOptions, shapeOf, type Values } from '../input/shape.js';
import { referenceQuantity } from '../reference-quantity.js';
import { STEP_COMFORT } from '../sources/slope-limits.js';
import type { LengthInput, SlopeInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { NO_SLOPE } from '../units/zero.js';
import {
  derivedStep,
  formulaStep,
  given,
  type Step,
  withWorking,
  type Worked,
} from '../working.js';
import { countParts } from './count-parts.js';

/** A rise, and the steps that climb it. */
export interface StepLayoutOptions {
  /** Height from the lower walk to the upper walk [length], more than 0 and at most 100 m. */
  readonly rise: LengthInput;
  /** Maximum height of a riser [length], more than 0 and at most 100 m. */
  readonly maximumRiser: LengthInput;
  /** Depth of a tread from front to back [length], more than 0 and at most 100 m. */
  readonly tread: LengthInput;
  /** Fall of a tread to its front, which sheds water [slope], 0 to 10. Default: level. */
  readonly treadFall?: SlopeInput;
}

const OPTIONS = shapeOf<StepLayoutOptions>()({
  rise: quantity(RISE),
  maximumRiser: quantity(RISE),
  tread: quantity(RISE),
  treadFall: optional(quantity(SLOPE_OR_NONE), NO_SLOPE),
});

/** Steps against the rule of comfort. */
export interface StepComfort {
  /** Two risers and a tread. */
  readonly value: Length;
  /** Maximum for comfort. */
  readonly maximum: Length;
  /** True if the value is no more than the maximum. */
  readonly isComfortable: boolean;
}

/** Equal steps over a rise. */
export interface StepLayout extends Worked {
  /** Number of risers. */
  readonly risers: number;
  /** Treads between the risers: one fewer than the risers. */
  readonly treads: number;
  /** Height of a riser. */
  readonly riser: Length;
  /** Depth of a tread, as given. */
  readonly tread: Length;
  /** Rise of a tread from front to back. */
  readonly treadRise: Length;
  /** Plan length of all treads. */
  readonly run: Length;
  /** The rule of comfort. */
  readonly comfort: StepComfort;
}

const MAXIMUM_COMFORT = referenceQuantity('length', STEP_COMFORT);
/** More risers than this are a wrong digit or unit. */
const MOST_RISERS = 1000;

/**
 * Equal steps in a walk. Treads that fall to their front take up part of the rise:
 * `n = ceil((H + s T) / (R0 + s T))`, `R = (H - (n - 1) s T) / n`, `run = (n - 1) T`, with the rule
 * of comfort `2 R + T <= 25 in`.
 *
 * @param options - see {@link StepLayoutOptions}
 * @returns number of risers and treads, riser, run [length], comfort
 * @throws `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE` (the treads alone climb the rise),
 *   `CAPACITY_EXCEEDED` (more than 1000 risers) and the reading codes
 * @source masonry-handbook
 * @example
 * const steps = stepLayout({ rise: '24.4 in', maximumRiser: '6.5 in', tread: '12 in' });
 * steps.risers //=> 4
 * steps.riser.to('in').toString() //=> '6.1'
 * steps.comfort.value.to('in').toString() //=> '24.2'
 */
export function stepLayout(options: StepLayoutOptions): StepLayout {
  const read = readOptions(options, OPTIONS);
  const { rise, maximumRiser, tread, treadFall } = read;
  const treadRise = tread.times(treadFall);
  const risers = countParts(rise.plus(treadRise), maximumRiser.plus(treadRise), {
    of: 'risers',
    most: MOST_RISERS,
    path: ['maximumRiser'],
  });
  const treads = risers - 1;
  const left = rise.minus(treadRise.times(treads));
  if (left.isNegative() || left.isZero()) {
    const why = 'the fall of the treads alone makes up the whole rise. Write a smaller fall';
    throw fault('OUT_OF_RANGE', why, {}, ['treadFall']);
  }
  const riser = left.dividedBy(risers);
  const run = tread.times(treads);
  const value = riser.times(2).plus(tread);
  const isComfortable = value.compare(MAXIMUM_COMFORT) <= 0;
  const comfort = { value, maximum: MAXIMUM_COMFORT, isComfortable };
  const layout = { risers, treads, riser, tread, treadRise, run, comfort };
  return withWorking(layout, () => layoutSteps(read, layout));
}

function layoutSteps(
  { rise, maximumRiser, tread, treadFall }: Values<typeof OPTIONS>,
  { risers, riser, comfort }: Pick<StepLayout, 'risers' | 'riser' | 'comfort'>,
): Step[] {
  const treads = [given('s', 'fall of a tread', treadFall), given('T', 'tread', tread)];
  return [
    derivedStep({
      title: 'Number of risers',
      formula: 'n = ceil((H + s * T) / (R0 + s * T))',
      given: [given('H', 'rise', rise), given('R0', 'maximum riser', maximumRiser), ...treads],
      result: given('n', 'risers', risers),
    }),
    derivedStep({
      title: 'Height of a riser',
      formula: 'R = (H - (n - 1) * s * T) / n',
      given: [given('H', 'rise', rise), given('n', 'risers', risers), ...treads],
      result: given('R', 'riser', riser),
    }),
    formulaStep({
      title: 'Comfort: two risers and a tread',
      formula: 'K = 2 * R + T',
      given: [given('R', 'riser', riser), given('T', 'tread', tread)],
      result: given('K', `comfort (no more than ${STEP_COMFORT.value} in)`, comfort.value),
      source: STEP_COMFORT.source,
    }),
  ];
}
