import { makeReader } from '../input/reader.js';
import { ZERO } from '../units/decimal.js';
import { given, withWorking, type Worked } from '../working.js';
import { AXLE_FACTOR, PER_DAY } from './limits.js';

/** Axles or trucks of one kind. */
export interface AxleCountInput {
  readonly name: string;
  readonly perDay: number | string;
  /** Damage of one of them over that of the standard axle. */
  readonly factor: number | string;
}

/** Traffic of a day in passes of the standard axle. */
export interface DailyEsals extends Worked {
  readonly perDay: number;
  readonly axles: readonly {
    readonly name: string;
    readonly perDay: number;
    readonly factor: number;
    /** Passes of the standard axle that do the same damage. */
    readonly esals: number;
  }[];
}

/**
 * Passes of the standard axle that do the damage of a day's traffic: `E = sum(n f)`. The factors depend
 * on axle, load, structural number and loss: they come from the tables of a guide, and none is built
 * in. Exact decimals.
 *
 * @param options.axles - `name`, `perDay` n (0 to 1 000 000), `factor` f (0 to 10 000)
 * @returns passes of the standard axle a day, in all and by kind
 * @throws `EMPTY_LIST`, `NEGATIVE`, `OUT_OF_RANGE`, `REQUIRED`, `WRONG_TYPE` and the reading codes
 * @source flexible-pavement-guide
 * @example
 * const axles = [
 *   { name: '20 kip single', perDay: 1080, factor: '1.51' },
 *   { name: '24 kip single', perDay: 400, factor: '3.03' },
 *   { name: '40 kip tandem', perDay: 680, factor: '2.08' },
 * ];
 * dailyEsals({ axles }).perDay //=> 4257.2
 */
export function dailyEsals(options: { readonly axles: readonly AxleCountInput[] }): DailyEsals {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const read = reader.list(fields['axles'], ['axles']).map((axle, index) => {
    const path = ['axles', index];
    const own = reader.object(axle, path);
    return {
      name: reader.text(own['name'], [...path, 'name']),
      perDay: reader.number(own['perDay'], [...path, 'perDay'], PER_DAY),
      factor: reader.number(own['factor'], [...path, 'factor'], AXLE_FACTOR),
    };
  });
  reader.finish();

  const each = read.map(({ perDay, factor }) => perDay.times(factor));
  const perDay = each.reduce((sum, esals) => sum.plus(esals), ZERO).toNumber();
  const axles = read.map((axle, index) => ({
    name: axle.name,
    perDay: axle.perDay.toNumber(),
    factor: axle.factor.toNumber(),
    esals: (each[index] ?? ZERO).toNumber(),
  }));
  return withWorking({ perDay, axles }, () => [
    {
      title: 'Traffic of a day',
      formula: `E = ${axles.map((_, index) => `n${index + 1} f${index + 1}`).join(' + ')}`,
      given: axles.flatMap((axle, index) => [
        given(`n${index + 1}`, `${axle.name}, a day`, axle.perDay),
        given(`f${index + 1}`, 'factor', axle.factor),
      ]),
      result: given('E', 'passes of the standard axle a day', perDay),
      source: 'flexible-pavement-guide',
    },
  ]);
}
