import { makeReader } from '../input/reader.js';
import { cautionsFor, type Caution } from '../sources/cautions.js';
import { given, withWorking, type Worked } from '../working.js';
import { ESALS, GROWTH, NO_GROWTH } from './limits.js';

/** How long a pavement lasts under its traffic. */
export interface ServiceLife extends Worked {
  /** Years until the passes are used up; null where traffic falls off so fast that they never are. */
  readonly years: number | null;
  readonly cautions: readonly Caution[];
}

/**
 * Years in which a traffic uses up the passes that a pavement carries:
 * `n = log(1 + r W / F) / log(1 + r)`, and `W / F` without growth.
 *
 * @param options.esals - W, passes of the standard axle that the pavement carries
 * @param options.firstYear - F, passes in the first year; see {@link designEsals}
 * @param options.growth - r a year: 0.03 for 3 %; -0.5 to 1, default 0
 * @returns years, null for no end; cautions
 * @throws `NOT_POSITIVE`, `OUT_OF_RANGE`, `REQUIRED`, `WRONG_TYPE` and the reading codes
 * @source flexible-pavement-guide
 * @example
 * serviceLife({ esals: 1_000_000, firstYear: 50_000 }).years //=> 20
 * serviceLife({ esals: 1_000_000, firstYear: 50_000, growth: '-0.1' }).years //=> null
 */
export function serviceLife(options: {
  readonly esals: number | string;
  readonly firstYear: number | string;
  readonly growth?: number | string;
}): ServiceLife {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const esals = reader.number(fields['esals'], ['esals'], ESALS).toNumber();
  const firstYear = reader.number(fields['firstYear'], ['firstYear'], ESALS).toNumber();
  const growth = reader.number(fields['growth'] ?? 0, ['growth'], GROWTH).toNumber();
  reader.finish();

  const years = yearsOf(esals / firstYear, growth);
  return withWorking({ years, cautions: cautionsFor('pavement-design') }, () => [
    {
      title: 'Years until the passes are used up',
      formula: growth === 0 ? 'n = W / F' : 'n = log(1 + r W / F) / log(1 + r)',
      given: [
        given('W', 'passes that the pavement carries', esals),
        given('F', 'passes in the first year', firstYear),
        given('r', 'growth a year', growth),
      ],
      result: given('n', 'years', years ?? 'no end'),
      source: 'flexible-pavement-guide',
    },
  ]);
}

function yearsOf(firstYears: number, growth: number): number | null {
  if (Math.abs(growth) < NO_GROWTH) return firstYears;
  const share = growth * firstYears;
  return share <= -1 ? null : Math.log1p(share) / Math.log1p(growth);
}
