import { makeReader } from '../input/reader.js';
import { PAVER_TOLERANCES } from '../sources/surface-tolerances.js';
import {
  length,
  type AreaInput,
  type DensityInput,
  type LengthInput,
  type MassInput,
} from '../units/construct.js';
import { exactOf } from '../units/quantity.js';
import { type Verdict } from '../verdict.js';
import { given, withWorking } from '../working.js';
import { fillJoints, jointSteps, readJoints, type JointSand } from './joint-sand.js';
import type { UnitInput } from './read-unit.js';
import { NO_LENGTH, SHORT } from './limits.js';
import { verdictWithin } from './within-limits.js';

/** Sand to fill joints up again. */
export interface JointTopUp extends JointSand {
  /** Whether the fill still stands within its limit below the top. */
  readonly verdict: Verdict;
  /** True where topping up is due. */
  readonly due: boolean;
  readonly meaning: string;
}

const LIMIT = length(PAVER_TOLERANCES.jointFillBelowTop.value, 'in');

/**
 * Sand to top up joints that have lost some: `V = A x share x mean depth lost`, and whether it is due:
 * where the fill stands more than a limit below the top. A fill on the limit is not due yet.
 *
 * @param options.area - of the paving [area]
 * @param options.unit - its own size without joints: `length` and `width` [length]
 * @param options.joint - joint width [length], more than 0, up to 100 mm
 * @param options.depthLost - mean of readings from the top of the unit down to the fill [length]
 * @param options.limit - greatest depth to the fill [length]; default 1/2 in, as published
 * @param options.uncertainty - of the mean, either way [length], default 0
 * @param options.density - of the sand in the joint, dry [density]
 * @param options.waste - a fraction 0 to 1 on top, default 0
 * @param options.bag - what one bag holds [mass], if bags are wanted
 * @returns as `jointSand`, and whether topping up is due
 * @throws `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`, `CAPACITY_EXCEEDED` and the reading codes
 * @source paver-tolerances
 * @example
 * const again = jointTopUp({
 *   area: '60 m2',
 *   unit: { length: '200 mm', width: '100 mm' },
 *   joint: '3 mm',
 *   depthLost: '15 mm',
 *   density: '1600 kg/m3',
 * });
 * again.due //=> true
 * again.mass.to('kg').toFixed(1) //=> '62.6'
 */
export function jointTopUp(options: {
  readonly area: AreaInput;
  readonly unit: UnitInput;
  readonly joint: LengthInput;
  readonly depthLost: LengthInput;
  readonly limit?: LengthInput;
  readonly uncertainty?: LengthInput;
  readonly density: DensityInput;
  readonly waste?: number | string;
  readonly bag?: MassInput;
}): JointTopUp {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const joints = readJoints(reader, fields);
  const lost = reader.quantity('length', fields['depthLost'], ['depthLost'], SHORT);
  const limit = reader.quantity('length', fields['limit'] ?? LIMIT, ['limit'], SHORT);
  const doubt = reader.quantity(
    'length',
    fields['uncertainty'] ?? NO_LENGTH,
    ['uncertainty'],
    SHORT,
  );
  reader.finish();
  const verdict = verdictWithin(exactOf(lost), { most: exactOf(limit) }, exactOf(doubt));
  const topUp = {
    ...fillJoints(joints, lost),
    verdict,
    due: verdict === 'fail',
    meaning: MEANINGS[verdict],
  };
  return withWorking(topUp, () => [
    ...jointSteps(joints, lost),
    {
      title: 'Fill below the top',
      formula: 'due where h > h0',
      given: [given('h', 'depth to the fill', lost), given('h0', 'greatest depth', limit)],
      result: given('due', 'topping up', MEANINGS[verdict]),
      source: 'paver-tolerances',
    },
  ]);
}

const MEANINGS: Readonly<Record<Verdict, string>> = {
  pass: 'The joints are full enough.',
  unclear: 'Too close to the limit to tell: take more readings.',
  fail: 'Top up the joints. Sand lost in lines or gullies is washed out: look for the drainage fault first.',
};
