import { quantity } from '../input/field.js';
import { RISE } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { referenceQuantity } from '../reference-quantity.js';
import type { SourceId } from '../sources/catalogue.js';
import { cautionsFor, type Cautioned } from '../sources/cautions.js';
import { LEVEL_CHANGE_LIMITS } from '../sources/slope-limits.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { formulaStep, given, withWorking, type Worked } from '../working.js';

/** A small change of level, such as a threshold. */
export interface LevelChangeOptions {
  /** The change of level [length], more than 0 and at most 100 m. */
  readonly rise: LengthInput;
}

const OPTIONS = shapeOf<LevelChangeOptions>()({ rise: quantity(RISE) });

/** Treatment of a small change of level on an accessible route. */
export interface LevelChange extends Cautioned, Worked {
  /** `vertical`: no treatment; `bevelled`: a sloped edge; `ramp`: too high for either. */
  readonly treatment: 'vertical' | 'bevelled' | 'ramp';
  /** Minimum run of the bevel in plan; null if there is no bevel. */
  readonly bevelRun: Length | null;
  /** Where the limits are printed. */
  readonly source: SourceId;
}

const VERTICAL = referenceQuantity('length', LEVEL_CHANGE_LIMITS.vertical);
const BEVELLED = referenceQuantity('length', LEVEL_CHANGE_LIMITS.bevelled);
const BEVEL = referenceQuantity('slope', LEVEL_CHANGE_LIMITS.bevel);

/**
 * A change of level on an accessible route, such as a threshold: up to 1/4 in it may be vertical, up
 * to 1/2 in its edge is bevelled no steeper than 1:2, and anything higher is a ramp.
 *
 * @param options - see {@link LevelChangeOptions}
 * @returns the treatment; for a bevel over the whole height, its minimum run `rise / bevel` [length];
 *   cautions
 * @throws `NOT_POSITIVE`, `OUT_OF_RANGE` and the reading codes
 * @source ada-level-change
 * @example
 * levelChange({ rise: '1/4 in' }).treatment //=> 'vertical'
 * levelChange({ rise: '3/8 in' }).bevelRun?.to('in').toString() //=> '0.75'
 * levelChange({ rise: '9/16 in' }).treatment //=> 'ramp'
 */
export function levelChange(options: LevelChangeOptions): LevelChange {
  const { rise } = readOptions(options, OPTIONS);
  const treatment = treatmentOf(rise);
  const bevelRun = treatment === 'bevelled' ? rise.dividedBy(BEVEL) : null;
  const { source } = LEVEL_CHANGE_LIMITS.vertical;
  return withWorking({ treatment, bevelRun, source, cautions: cautionsFor('access') }, () =>
    bevelRun === null
      ? []
      : [
          formulaStep({
            title: 'Minimum run of the bevel',
            formula: 'b = h / g',
            given: [given('h', 'change of level', rise), given('g', 'steepest bevel', BEVEL)],
            result: given('b', 'run', bevelRun),
            source: 'ada-level-change',
          }),
        ],
  );
}

function treatmentOf(rise: Length): LevelChange['treatment'] {
  if (rise.compare(VERTICAL) <= 0) return 'vertical';
  return rise.compare(BEVELLED) <= 0 ? 'bevelled' : 'ramp';
}
