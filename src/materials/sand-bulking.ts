import { makeReader } from '../input/reader.js';
import type { LengthInput } from '../units/construct.js';
import type { Decimal } from '../units/decimal.js';
import { given, withWorking, type Worked } from '../working.js';
import { LAYER_OF_SOME } from './limits.js';

/** How much more room damp sand takes than dry. */
export interface SandBulking extends Worked {
  /** A fraction: 0.25 means a quarter more. */
  readonly bulking: Decimal;
}

/**
 * Bulking of sand, measured in a straight-sided jar: fill it with damp sand and read the height, flood
 * the sand, stir, let it settle and read again; flooded sand takes as much room as dry.
 * `b = (damp - flooded) / flooded`.
 *
 * @param options.damp - height of the damp sand [length]
 * @param options.flooded - height once flooded and settled [length], not more than `damp`
 * @returns the bulking factor, a fraction
 * @throws `NOT_POSITIVE`, `OUT_OF_RANGE` and the reading codes
 * @source sand-bulking-course
 * @example
 * sandBulking({ damp: '10 in', flooded: '8 in' }).bulking.toString() //=> '0.25'
 */
export function sandBulking(options: {
  readonly damp: LengthInput;
  readonly flooded: LengthInput;
}): SandBulking {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const damp = reader.quantity('length', fields['damp'], ['damp'], LAYER_OF_SOME);
  const flooded = reader.quantity('length', fields['flooded'], ['flooded'], LAYER_OF_SOME);
  reader.finish();
  if (flooded.compare(damp) > 0) {
    reader.fail('OUT_OF_RANGE', ['flooded'], 'flooded sand does not stand higher than damp sand');
    reader.finish();
  }
  const bulking = damp.minus(flooded).dividedBy(flooded);
  return withWorking({ bulking }, () => [
    {
      title: 'Bulking of damp sand',
      formula: 'b = (h1 - h2) / h2',
      given: [given('h1', 'height damp', damp), given('h2', 'height flooded', flooded)],
      result: given('b', 'bulking', bulking),
      source: 'sand-bulking-course',
    },
  ]);
}
