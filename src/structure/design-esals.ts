import { exactlyOne } from '../input/exactly-one.js';
import { list, number, object, optional } from '../input/field.js';
import { SHARE } from '../input/ranges.js';
import { readOptions, shapeOf, type Check, type Values } from '../input/shape.js';
import { DAYS, ESALS, GROWTH, YEARS, YEARS_OR_NONE } from '../input/structure-ranges.js';
import { Decimal40, ONE, ZERO } from '../units/decimal.js';
import { formulaStep, given, type Step, withWorking, type Worked } from '../working.js';
import {
  AXLE_COUNT,
  axleEsals,
  dayStep,
  sumOfEsals,
  type AxleCountInput,
  type AxleEsals,
} from './axle-esals.js';
import { growthFactor, grownBy } from './growth.js';

/** Traffic of a day, and its growth over the years. */
export interface DesignEsalsOptions {
  /** Axles or trucks per day in both directions, by kind, when counted. Give this or `perDay`. */
  readonly axles?: readonly AxleCountInput[];
  /**
   * Passes of the standard axle per day in both directions, when counted, more than 0 and at most
   * 10 000 million. Give this or `axles`.
   */
  readonly perDay?: number | string;
  /** Design life in years, more than 0 and at most 100. */
  readonly years: number | string;
  /** Growth per year, a fraction: 0.03 for 3%, -0.5 to 1. Default: 0. */
  readonly growth?: number | string;
  /** Days per year with this traffic, more than 0 and at most 366. Default: 365. */
  readonly days?: number | string;
  /** Share of the traffic in one direction, more than 0 and at most 1. Default: 1. */
  readonly direction?: number | string;
  /** Share of that direction in the design lane, more than 0 and at most 1. Default: 1. */
  readonly lane?: number | string;
  /** Years from the count to the opening, 0 to 100. Default: 0. */
  readonly yearsBefore?: number | string;
}

/** Days per year, if none are given. */
const ALL_DAYS = new Decimal40(365);

const OPTIONS = shapeOf<DesignEsalsOptions>()({
  axles: optional(list(object(AXLE_COUNT), { of: 'axles' })),
  perDay: optional(number(ESALS)),
  years: number(YEARS),
  growth: optional(number(GROWTH), ZERO),
  days: optional(number(DAYS), ALL_DAYS),
  direction: optional(number(SHARE), ONE),
  lane: optional(number(SHARE), ONE),
  yearsBefore: optional(number(YEARS_OR_NONE), ZERO),
});

/** Traffic over the life of a pavement. */
export interface DesignEsals extends Worked {
  /** Passes of the standard axle in the design lane over all the years. */
  readonly esals: number;
  /** Passes in the first year after opening. */
  readonly firstYear: number;
  /** Growth factor: the total over the first year. */
  readonly growthFactor: number;
  /** Passes of the standard axle per day in both directions, when counted. */
  readonly perDay: number;
  /** Passes by kind of axle; empty if you gave `perDay`. */
  readonly axles: readonly AxleEsals[];
}

/**
 *
 * Passes of the standard axle in the design lane over the life of a pavement: a day's traffic
 * `E = sum(n f)`, in the first year `F = E days direction lane (1 + r)^before`, in total
 * `W = F ((1 + r)^n - 1) / r`, or `F n` without growth. The factors f depend on axle, load,
 * structural number and loss. They come from the tables of a guide; none are built in. Counted to
 * 40 digits; the results are the nearest floats.
 *
 * @param options - see {@link DesignEsalsOptions}
 * @returns passes over the design life, in the first year and per day, in total and by kind; growth
 * factor
 * @throws `REQUIRED` or `CONFLICTING_FIELDS` unless either axles or passes a day are given,
 *   `EMPTY_LIST`, `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_TYPE` and the reading codes
 * @source flexible-pavement-guide
 * @example
 * const drive = designEsals({ perDay: '941.568', years: 12 });
 * drive.esals //=> 4124067.84
 * const axles = [
 *   { name: '20 kip single', perDay: 1080, factor: '1.51' },
 *   { name: '24 kip single', perDay: 400, factor: '3.03' },
 *   { name: '40 kip tandem', perDay: 680, factor: '2.08' },
 * ];
 * const road = designEsals({ axles, years: 20, growth: '0.04' });
 * road.perDay //=> 4257.2
 * road.growthFactor.toFixed(4) //=> '29.7781'
 */
export function designEsals(options: DesignEsalsOptions): DesignEsals {
  const read = readOptions(options, OPTIONS, checkTraffic);
  const perDay = read.perDay ?? sumOfEsals(read.axles ?? []);
  const first = perDay
    .times(read.days)
    .times(read.direction)
    .times(read.lane)
    .times(grownBy(read.growth, read.yearsBefore));
  const factor = growthFactor(read.growth, read.years);
  const found = {
    esals: first.times(factor).toNumber(),
    firstYear: first.toNumber(),
    growthFactor: factor.toNumber(),
    perDay: perDay.toNumber(),
    axles: (read.axles ?? []).map(axleEsals),
  };
  return withWorking(found, () => [
    ...(read.axles === undefined ? [] : [dayStep(found.axles, found.perDay)]),
    ...lifeSteps(read, found),
  ]);
}

/** Refuses a day's traffic that is given in two ways. */
const checkTraffic: Check<typeof OPTIONS> = (reader, _, path, raw) => {
  exactlyOne(reader, raw, ['axles', 'perDay'], [...path, 'perDay']);
};

function lifeSteps(
  read: Values<typeof OPTIONS>,
  { perDay, firstYear, esals }: Pick<DesignEsals, 'perDay' | 'firstYear' | 'esals'>,
): Step[] {
  return [
    formulaStep({
      title: 'Traffic of the first year in the design lane',
      formula: 'F = E * d * p * q * (1 + r)^b',
      given: [
        given('E', 'passes of the standard axle a day', perDay),
        given('d', 'days', read.days),
        given('p', 'share in one direction', read.direction),
        given('q', 'share in the lane', read.lane),
        given('r', 'growth a year', read.growth),
        given('b', 'years from count to opening', read.yearsBefore),
      ],
      result: given('F', 'first year', firstYear),
      source: 'flexible-pavement-guide',
    }),
    formulaStep({
      title: 'Traffic over the life',
      formula: 'W = r == 0 ? F * n : F * ((1 + r)^n - 1) / r',
      given: [
        given('F', 'first year', firstYear),
        given('r', 'growth a year', read.growth),
        given('n', 'years', read.years),
      ],
      result: given('W', 'passes of the standard axle', esals),
      source: 'flexible-pavement-guide',
    }),
  ];
}
