import { makeReader } from '../input/reader.js';
import { referenceQuantity } from '../reference-quantity.js';
import type { SourceId } from '../sources/catalogue.js';
import { cautionsFor, type Caution } from '../sources/cautions.js';
import { LEVEL_CHANGE_LIMITS } from '../sources/slope-limits.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { given, withWorking, type Worked } from '../working.js';
import { RISE } from './limits.js';

/** How a small change of level on an accessible route may be made. */
export interface LevelChange extends Worked {
  /** `vertical`: as it is; `bevelled`: with a sloped edge; `ramp`: too high for either. */
  readonly treatment: 'vertical' | 'bevelled' | 'ramp';
  /** Shortest run of the bevel in plan, where one is needed. */
  readonly bevelRun?: Length;
  readonly source: SourceId;
  readonly cautions: readonly Caution[];
}

const VERTICAL = referenceQuantity('length', LEVEL_CHANGE_LIMITS.vertical);
const BEVELLED = referenceQuantity('length', LEVEL_CHANGE_LIMITS.bevelled);
const BEVEL = referenceQuantity('slope', LEVEL_CHANGE_LIMITS.bevel);

/**
 * A change of level on an accessible route, such as a threshold: up to 1/4 in it may stand upright, up
 * to 1/2 in its edge is bevelled no steeper than 1:2, beyond that it is a ramp.
 *
 * @param options.rise - the change of level [length], more than 0
 * @returns the treatment and, for a bevel over the whole height, its shortest run `rise / bevel`
 *   [length]; cautions
 * @throws `NOT_POSITIVE`, `OUT_OF_RANGE` and the reading codes
 * @source ada-level-change
 * @example
 * levelChange({ rise: '1/4 in' }).treatment //=> 'vertical'
 * levelChange({ rise: '3/8 in' }).bevelRun?.to('in').toString() //=> '0.75'
 * levelChange({ rise: '9/16 in' }).treatment //=> 'ramp'
 */
export function levelChange(options: { readonly rise: LengthInput }): LevelChange {
  const reader = makeReader();
  const rise = reader.quantity('length', reader.object(options, [])['rise'], ['rise'], RISE);
  reader.finish();
  const source = LEVEL_CHANGE_LIMITS.vertical.source;
  const cautions = cautionsFor('access');
  if (rise.compare(VERTICAL) <= 0) {
    return withWorking({ treatment: 'vertical', source, cautions } as const, () => []);
  }
  if (rise.compare(BEVELLED) > 0) {
    return withWorking({ treatment: 'ramp', source, cautions } as const, () => []);
  }
  const bevelRun = rise.dividedBy(BEVEL);
  return withWorking({ treatment: 'bevelled', bevelRun, source, cautions } as const, () => [
    {
      title: 'Shortest run of the bevel',
      formula: 'b = h / g',
      given: [given('h', 'change of level', rise), given('g', 'steepest bevel', BEVEL)],
      result: given('b', 'run', bevelRun),
      source: 'ada-level-change',
    },
  ]);
}
