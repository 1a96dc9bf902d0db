import { fault } from '../errors.js';
import { makeReader } from '../input/reader.js';
import { referenceQuantity } from '../reference-quantity.js';
import { STEP_COMFORT } from '../sources/slope-limits.js';
import type { LengthInput, SlopeInput } from '../units/construct.js';
import { wholeNumberUp } from '../units/format-quantity.js';
import type { Length } from '../units/quantity.js';
import { given, withWorking, type Worked } from '../working.js';
import { RISE, SLOPE_MARGIN } from './limits.js';

/** Equal steps over a rise. */
export interface StepLayout extends Worked {
  readonly risers: number;
  /** Treads between the risers: one less than there are risers. */
  readonly treads: number;
  readonly riser: Length;
  readonly tread: Length;
  /** What each tread rises from front to back, so that water runs off its front. */
  readonly treadRise: Length;
  /** Plan length of all treads. */
  readonly run: Length;
  /** Two risers and a tread, and whether that keeps the rule of comfort. */
  readonly comfort: { readonly value: Length; readonly most: Length; readonly keeps: boolean };
}

const MOST_COMFORT = referenceQuantity('length', STEP_COMFORT);

/**
 * Equal steps in a walk. Treads that fall to their front take a part of the rise:
 * `n = ceil((H + s T) / (R0 + s T))`, `R = (H - (n - 1) s T) / n`, `run = (n - 1) T`, with the rule of
 * comfort `2 R + T <= 25 in`.
 *
 * @param options.rise - from the walk below to the walk above [length]
 * @param options.mostRiser - highest riser [length]
 * @param options.tread - depth of a tread [length]
 * @param options.treadFall - fall of a tread to its front [slope], default level
 * @returns number of risers and treads, riser, run [length], comfort
 * @throws `NOT_POSITIVE`, `OUT_OF_RANGE` (the treads alone climb the rise), `CAPACITY_EXCEEDED` and the
 *   reading codes
 * @source masonry-handbook
 * @example
 * const steps = stepLayout({ rise: '24.4 in', mostRiser: '6.5 in', tread: '12 in' });
 * steps.risers //=> 4
 * steps.riser.to('in').toString() //=> '6.1'
 * steps.comfort.value.to('in').toString() //=> '24.2'
 */
export function stepLayout(options: {
  readonly rise: LengthInput;
  readonly mostRiser: LengthInput;
  readonly tread: LengthInput;
  readonly treadFall?: SlopeInput;
}): StepLayout {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const rise = reader.quantity('length', fields['rise'], ['rise'], RISE);
  const mostRiser = reader.quantity('length', fields['mostRiser'], ['mostRiser'], RISE);
  const tread = reader.quantity('length', fields['tread'], ['tread'], RISE);
  const fall = reader.quantity('slope', fields['treadFall'] ?? '0%', ['treadFall'], SLOPE_MARGIN);
  reader.finish();
  const treadRise = tread.times(fall);
  const risers = wholeNumberUp(rise.plus(treadRise), mostRiser.plus(treadRise));
  const treads = risers - 1;
  const left = rise.minus(treadRise.times(treads));
  if (left.isNegative() || left.isZero()) {
    throw fault('OUT_OF_RANGE', 'the treads alone climb the whole rise', {}, ['treadFall']);
  }
  const riser = left.dividedBy(risers);
  const run = tread.times(treads);
  const value = riser.times(2).plus(tread);
  const comfort = { value, most: MOST_COMFORT, keeps: value.compare(MOST_COMFORT) <= 0 };
  return withWorking({ risers, treads, riser, tread, treadRise, run, comfort }, () => [
    {
      title: 'Number of risers',
      formula: 'n = ceil((H + s T) / (R0 + s T))',
      given: [
        given('H', 'rise', rise),
        given('R0', 'highest riser', mostRiser),
        given('s', 'fall of a tread', fall),
        given('T', 'tread', tread),
      ],
      result: given('n', 'risers', risers),
      source: 'derived',
    },
    {
      title: 'Height of a riser',
      formula: 'R = (H - (n - 1) s T) / n',
      given: [
        given('H', 'rise', rise),
        given('n', 'risers', risers),
        given('s', 'fall of a tread', fall),
        given('T', 'tread', tread),
      ],
      result: given('R', 'riser', riser),
      source: 'derived',
    },
    {
      title: 'Comfort: two risers and a tread',
      formula: 'K = 2 R + T',
      given: [given('R', 'riser', riser), given('T', 'tread', tread)],
      result: given('K', `comfort (no more than ${STEP_COMFORT.value} in)`, value),
      source: STEP_COMFORT.source,
    },
  ]);
}
