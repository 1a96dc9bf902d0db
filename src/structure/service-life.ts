import { float, optional } from '../input/field.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { ESALS, GROWTH } from '../input/structure-ranges.js';
import { cautionsFor, type Cautioned } from '../sources/cautions.js';
import { formulaStep, given, withWorking, type Worked } from '../working.js';
import { yearsFor } from './growth.js';

/** The traffic that a pavement can carry, and the traffic on it. */
export interface ServiceLifeOptions {
  /**
   * Passes of the standard axle that the pavement carries, more than 0 and at most 10 000 million; see
   * {@link allowableEsals}.
   */
  readonly esals: number | string;
  /** Passes in the first year, more than 0 and at most 10 000 million; see {@link designEsals}. */
  readonly firstYear: number | string;
  /** Growth per year, a fraction: 0.03 for 3%, -0.5 to 1. Default: 0. */
  readonly growth?: number | string;
}

const OPTIONS = shapeOf<ServiceLifeOptions>()({
  esals: float(ESALS),
  firstYear: float(ESALS),
  growth: optional(float(GROWTH), 0),
});

/** Life of a pavement under its traffic. */
export interface ServiceLife extends Cautioned, Worked {
  /** Years until the passes are used up; null if traffic declines so fast that they never are. */
  readonly years: number | null;
}

/**
 * Years until traffic uses up the passes that a pavement can carry:
 * `n = log(1 + r W / F) / log(1 + r)`, or `W / F` without growth.
 *
 * @param options - see {@link ServiceLifeOptions}
 * @returns years, null for no end; cautions
 * @throws `NOT_POSITIVE`, `OUT_OF_RANGE`, `REQUIRED`, `WRONG_TYPE` and the reading codes
 * @source flexible-pavement-guide
 * @example
 * serviceLife({ esals: 1_000_000, firstYear: 50_000 }).years //=> 20
 * serviceLife({ esals: 1_000_000, firstYear: 50_000, growth: '-0.1' }).years //=> null
 */
export function serviceLife(options: ServiceLifeOptions): ServiceLife {
  const { esals, firstYear, growth } = readOptions(options, OPTIONS);
  const years = yearsFor(esals / firstYear, growth);
  return withWorking({ years, cautions: cautionsFor('pavement-design') }, () => [
    formulaStep({
      title: 'Years until the passes are used up',
      formula:
        'n = r == 0 ? W / F : (r * W / F <= -1 ? "no end" : log(1 + r * W / F) / log(1 + r))',
      given: [
        given('W', 'passes that the pavement carries', esals),
        given('F', 'passes in the first year', firstYear),
        given('r', 'growth a year', growth),
      ],
      result: given('n', 'years', years ?? 'no end'),
      source: 'flexible-pavement-guide',
    }),
  ]);
}
