import { fault } from '../../errors.js';
import { choice, float, list, optional } from '../../input/field.js';
import { readOptions, shapeOf, type Check } from '../../input/shape.js';
import { entry, lastOf } from '../../invariant.js';
import { given, procedureStep, withWorking, type Worked } from '../../working.js';
import { asDegreeDays, type DegreeDays, type TemperatureInput } from './thermal-units.js';

/** Definitions of the freezing index. */
export const FREEZING_INDEX_DEFINITIONS = Object.freeze(['seasonal', 'total', 'monthly'] as const);
/** A definition of the freezing index. */
export type FreezingIndexDefinition = (typeof FREEZING_INDEX_DEFINITIONS)[number];

/** Mean temperatures of the air in order, and how to add them up. */
export interface FreezingIndexOptions {
  /**
   * Mean temperature of each day or month in order, 1 to 3660, -80 to 60 degrees C. A day's mean is
   * that of its maximum and minimum.
   */
  readonly temperatures: readonly (number | string)[];
  /** Unit of the temperatures. */
  readonly unit: TemperatureInput['unit'];
  /**
   * `seasonal`: from the highest to the lowest point of the summed curve of daily means; `total`: the
   * days below freezing alone; `monthly`: monthly means below freezing, times the days of the month.
   * Default: `seasonal`.
   */
  readonly definition?: FreezingIndexDefinition;
  /** Days of each month, 28 to 31, as many as temperatures; only for `monthly`. */
  readonly days?: readonly (number | string)[];
}

/** -80 to 60 degrees C in degrees F; those given in C are checked once the unit is known. */
const DEGREES = { sign: 'any', least: -112, most: 140, example: '-4.5' } as const;
const CELSIUS = { least: -80, most: 60 } as const;
const MONTH = { sign: 'positive', least: 28, most: 31, example: '31' } as const;

const OPTIONS = shapeOf<FreezingIndexOptions>()({
  temperatures: list(float(DEGREES), { of: 'temperatures', most: 3660 }),
  unit: choice(['C', 'F']),
  definition: optional(choice(FREEZING_INDEX_DEFINITIONS), 'seasonal'),
  days: optional(list(float(MONTH), { of: 'days', most: 3660 })),
});

const checkCelsius: Check<typeof OPTIONS> = (reader, { temperatures = [], unit }, path) => {
  if (unit !== 'C') return;
  temperatures.forEach((value, index) => {
    const { least, most } = CELSIUS;
    if (value >= least && value <= most) return;
    const message = `${value} C is not a temperature of the air, ${least} to ${most} C. Check the digits and the unit`;
    reader.fail('OUT_OF_RANGE', [...path, 'temperatures', index], message, {
      got: value,
      least,
      most,
    });
  });
};

/** How cold a winter was. */
export interface FreezingIndex extends Worked {
  /** The index of the air, 0 for a winter without frost. */
  readonly index: DegreeDays;
  /** The definition used. */
  readonly definition: FreezingIndexDefinition;
  /** Days that it counts: between the two points of the curve, or those below freezing. */
  readonly seasonDays: number;
}

/**
 * Freezing index of the air: `seasonal`, the fall of the curve of summed daily means, thaws between
 * frosts included; `total`, the sum of the days below freezing; `monthly`, the same by months, which
 * loses short frosts. Give a whole season, autumn to spring.
 *
 * @param options - see {@link FreezingIndexOptions}
 * @returns index in C-days, days of the season
 * @throws `COUNT_MISMATCH`, `CONFLICTING_FIELDS`, `EMPTY_LIST`, `TOO_MANY`, `REQUIRED`,
 *   `OUT_OF_RANGE`, `UNKNOWN_CHOICE`, `WRONG_TYPE` and the reading codes
 * @source freezing-index-terms
 * @source freezing-index-course
 * @example
 * const temperatures = [3, -2, -5, 1, -4, 2];
 * freezingIndex({ temperatures, unit: 'C' }).index.value //=> 10
 * freezingIndex({ temperatures, unit: 'C', definition: 'total' }).index.value //=> 11
 */
export function freezingIndex(options: FreezingIndexOptions): FreezingIndex {
  const read = readOptions(options, OPTIONS, checkCelsius);
  const { definition } = read;
  const days = daysOf(read.days, definition, read.temperatures.length);
  const celsius = read.temperatures.map((value) =>
    read.unit === 'F' ? ((value - 32) * 5) / 9 : value,
  );
  const { sum, season } = definition === 'seasonal' ? fallOf(celsius) : frostsOf(celsius, days);
  const found = { index: asDegreeDays(sum), definition, seasonDays: season };
  return withWorking(found, () => [
    procedureStep({
      title: `Freezing index, ${definition}`,
      procedure: 'freezingIndex',
      method: METHODS[definition],
      given: [
        given('T', 'mean temperatures, in degrees C', celsius),
        given('s', 'days of the season', season),
      ],
      result: given('F', 'freezing index, in C-days', sum),
      source: 'freezing-index-terms',
    }),
  ]);
}

const METHODS: Readonly<Record<FreezingIndexDefinition, string>> = {
  seasonal: 'adds the temperatures up day by day and takes the largest fall of the sum',
  total: 'adds up the degrees below freezing of the days that freeze',
  monthly: 'adds up the degrees below freezing of the months that freeze, each times its days',
};

function daysOf(
  days: readonly number[] | undefined,
  definition: FreezingIndexDefinition,
  count: number,
): readonly number[] {
  if (definition !== 'monthly') {
    if (days === undefined) return [];
    throw fault('CONFLICTING_FIELDS', 'only monthly means have days', {}, ['days']);
  }
  if (days?.length === count) return days;
  const got = days?.length ?? 0;
  const message = `${got} for ${count} temperatures. Give the days of each month`;
  throw fault('COUNT_MISMATCH', message, { got, expected: count }, ['days']);
}

/** The largest fall of the summed curve, and the days that it takes. */
function fallOf(celsius: readonly number[]): { readonly sum: number; readonly season: number } {
  const curve = celsius.reduce<number[]>(
    (points, value) => [...points, lastOf(points) + value],
    [0],
  );
  let best = { sum: 0, season: 0 };
  let high = 0;
  curve.forEach((point, day) => {
    if (point >= entry(curve, high)) high = day;
    const sum = entry(curve, high) - point;
    if (sum > best.sum) best = { sum, season: day - high };
  });
  return best;
}

function frostsOf(
  celsius: readonly number[],
  days: readonly number[],
): { readonly sum: number; readonly season: number } {
  let sum = 0;
  let season = 0;
  celsius.forEach((value, index) => {
    if (value >= 0) return;
    const length = days[index] ?? 1;
    sum -= value * length;
    season += length;
  });
  return { sum, season };
}
