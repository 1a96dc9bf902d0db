import { number } from '../input/field.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { BEARING_RATIO } from '../input/structure-ranges.js';
import { cautionsFor, type Cautioned } from '../sources/cautions.js';
import { MODULUS_PER_CBR } from '../sources/flexible-pavements.js';
import { referenceQuantity } from '../reference-quantity.js';
import type { Pressure } from '../units/quantity.js';
import { formulaStep, given, withWorking, type Worked } from '../working.js';

/** A soil, to estimate its modulus. */
export interface ModulusFromCbrOptions {
  /** California bearing ratio in percent, more than 0 and at most 200: 3.5 means 3.5%. */
  readonly cbr: number | string;
}

const OPTIONS = shapeOf<ModulusFromCbrOptions>()({ cbr: number(BEARING_RATIO) });

/** Resilient modulus estimated from a bearing ratio. */
export interface ModulusFromCbr extends Cautioned, Worked {
  /** Resilient modulus of the soil. */
  readonly resilientModulus: Pressure;
  /** True if the ratio is above the range of the rule. */
  readonly isBeyondRule: boolean;
}

/**
 * Resilient modulus of fine soil by its California bearing ratio: `M = 1500 psi x CBR`, said to
 * apply up to a ratio of 10 (from memory; one printed sheet ends it below 5). It is a rough rule. A
 * test of the soil is better.
 *
 * @param options - see {@link ModulusFromCbrOptions}
 * @returns modulus [pressure], whether the ratio is beyond the rule, cautions
 * @throws `NOT_POSITIVE`, `OUT_OF_RANGE`, `REQUIRED`, `WRONG_TYPE` and the reading codes
 * @source nomograph-notes
 * @example
 * modulusFromCbr({ cbr: '3.5' }).resilientModulus.to('psi').toString() //=> '5250'
 * modulusFromCbr({ cbr: 25 }).isBeyondRule //=> true
 */
export function modulusFromCbr(options: ModulusFromCbrOptions): ModulusFromCbr {
  const { cbr } = readOptions(options, OPTIONS);
  const perPercent = referenceQuantity('pressure', MODULUS_PER_CBR.perPercent);
  const found = {
    resilientModulus: perPercent.times(cbr),
    isBeyondRule: cbr.gt(MODULUS_PER_CBR.maximumCbr.value),
    cautions: cautionsFor('pavement-design'),
  };
  return withWorking(found, () => [
    formulaStep({
      title: 'Modulus by the bearing ratio',
      formula: 'M = k * CBR',
      given: [given('k', 'for each percent', perPercent), given('CBR', 'bearing ratio', cbr)],
      result: given('M', 'resilient modulus', found.resilientModulus),
      source: MODULUS_PER_CBR.perPercent.source,
    }),
  ]);
}
