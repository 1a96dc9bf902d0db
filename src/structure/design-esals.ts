import { makeReader, type Reader } from '../input/reader.js';
import { Decimal40, ONE, type Decimal } from '../units/decimal.js';
import { given, withWorking, type Worked } from '../working.js';
import { DAYS, ESALS, GROWTH, NO_GROWTH, PART, YEARS, YEARS_OR_NONE } from './limits.js';

/** Traffic over the life of a pavement. */
export interface DesignEsals extends Worked {
  /** Passes of the standard axle in the design lane over all the years. */
  readonly esals: number;
  /** Of them in the first year after opening. */
  readonly firstYear: number;
  /** By how many first years the whole is counted. */
  readonly growthFactor: number;
}

/** Days in a year, where none are given. */
const ALL_DAYS = 365;

/**
 * Passes of the standard axle in the design lane over the life of a pavement: in the first year
 * `F = E days direction lane (1 + r)^before`, in all `W = F ((1 + r)^n - 1) / r`, and `F n` without
 * growth. Counted to 40 digits; the results are the nearest floats.
 *
 * @param options.perDay - E, passes of the standard axle a day in both directions, when they were counted
 * @param options.years - n, more than 0 and at most 100
 * @param options.growth - r a year: 0.03 for 3 %; -0.5 to 1, default 0
 * @param options.days - in a year with such traffic, default 365
 * @param options.direction - share of it in one direction, default 1
 * @param options.lane - share of that in the design lane, default 1
 * @param options.yearsBefore - from the count to the opening, default 0
 * @returns passes over all the years and in the first, growth factor
 * @throws `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`, `REQUIRED`, `WRONG_TYPE` and the reading codes
 * @source flexible-pavement-guide
 * @example
 * const drive = designEsals({ perDay: '941.568', years: 12 });
 * drive.esals //=> 4124067.84
 * designEsals({ perDay: 100, years: 20, growth: '0.04' }).growthFactor.toFixed(4) //=> '29.7781'
 */
export function designEsals(options: {
  readonly perDay: number | string;
  readonly years: number | string;
  readonly growth?: number | string;
  readonly days?: number | string;
  readonly direction?: number | string;
  readonly lane?: number | string;
  readonly yearsBefore?: number | string;
}): DesignEsals {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const read = (name: string, rule: Parameters<Reader['number']>[2], otherwise?: number): Decimal =>
    reader.number(fields[name] ?? otherwise, [name], rule);
  const perDay = read('perDay', ESALS);
  const years = read('years', YEARS);
  const growth = read('growth', GROWTH, 0);
  const days = read('days', DAYS, ALL_DAYS);
  const direction = read('direction', PART, 1);
  const lane = read('lane', PART, 1);
  const before = read('yearsBefore', YEARS_OR_NONE, 0);
  reader.finish();

  const atOpening = power(growth, before);
  const first = perDay.times(days).times(direction).times(lane).times(atOpening);
  const factor = growthFactor(growth, years);
  const found = {
    esals: first.times(factor).toNumber(),
    firstYear: first.toNumber(),
    growthFactor: factor.toNumber(),
  };
  return withWorking(found, () => [
    {
      title: 'Traffic of the first year in the design lane',
      formula: 'F = E d p q (1 + r)^b',
      given: [
        given('E', 'passes of the standard axle a day', perDay),
        given('d', 'days', days),
        given('p', 'share in one direction', direction),
        given('q', 'share in the lane', lane),
        given('r', 'growth a year', growth),
        given('b', 'years from count to opening', before),
      ],
      result: given('F', 'first year', found.firstYear),
      source: 'flexible-pavement-guide',
    },
    {
      title: 'Traffic over the life',
      formula: growth.isZero() ? 'W = F n' : 'W = F ((1 + r)^n - 1) / r',
      given: [
        given('F', 'first year', found.firstYear),
        given('r', 'growth a year', growth),
        given('n', 'years', years),
      ],
      result: given('W', 'passes of the standard axle', found.esals),
      source: 'flexible-pavement-guide',
    },
  ]);
}

const growthFactor = (growth: Decimal, years: Decimal): Decimal =>
  growth.abs().lt(NO_GROWTH) ? years : power(growth, years).minus(ONE).dividedBy(growth);

/** `(1 + r)^n` to 40 digits. */
const power = (growth: Decimal, years: Decimal): Decimal =>
  new Decimal40(ONE.plus(growth)).pow(years);
