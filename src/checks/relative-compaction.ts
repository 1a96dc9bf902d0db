import { number, optional, quantity } from '../input/field.js';
import { DENSITY, FRACTION } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { COMPACTION_MARK } from '../sources/compaction-mark.js';
import type { DensityInput } from '../units/construct.js';
import type { Decimal } from '../units/decimal.js';
import { exactOf, fromSI, type Density } from '../units/quantity.js';
import {
  addRatios,
  compareRatios,
  decimalRatio,
  divideRatios,
  multiplyRatios,
  ONE_RATIO,
  ratioToNumber,
  wholeRatio,
  type Ratio,
} from '../units/ratio.js';
import { readNumber } from '../units/read-number.js';
import { derivedStep, given, type Step, withWorking, type Worked } from '../working.js';

/** A density test in place, and the laboratory test it is compared with. */
export interface RelativeCompactionOptions {
  /** Density in place, water included [density], more than 0 and at most 5 t/m3. */
  readonly wetDensity: DensityInput;
  /** Water over dry mass, a fraction 0 to 1. */
  readonly moisture: number | string;
  /** Maximum dry density of the laboratory test [density], more than 0 and at most 5 t/m3. */
  readonly maximumDryDensity: DensityInput;
  /**
   * Optimum moisture of that test, a fraction 0 to 1. Default: the water to add is not worked out.
   */
  readonly optimumMoisture?: number | string;
}

const OPTIONS = shapeOf<RelativeCompactionOptions>()({
  wetDensity: quantity(DENSITY),
  moisture: number(FRACTION),
  maximumDryDensity: quantity(DENSITY),
  optimumMoisture: optional(number(FRACTION)),
});

/** Density of a layer compared with a laboratory test. */
export interface RelativeCompaction extends Worked {
  /** Density in place without its water. */
  readonly dryDensity: Density;
  /** Dry density over the maximum dry density, in percent, as the nearest float. */
  readonly percent: number;
  /**
   * Water to add per volume in place to reach the optimum moisture; negative to dry it by that
   * much. Null if no optimum is given.
   */
  readonly waterToAdd: Density | null;
  /** True above 105%: the laboratory test is likely of another material or another effort. */
  readonly isSuspect: boolean;
}

/**
 * Relative compaction: `dry density = wet density / (1 + w)`, `percent = 100 x dry / maximum dry`.
 * Moisture is water over **dry** mass. If you take it over wet mass, the layer looks denser than it
 * is.
 *
 * @param options - see {@link RelativeCompactionOptions}
 * @returns dry density, percent, water to add per volume [density], whether the test is suspect
 * @throws `REQUIRED`, `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @source common-practice
 * @example
 * const spot = relativeCompaction({
 *   wetDensity: '2.05 t/m3',
 *   moisture: 0.11,
 *   maximumDryDensity: '1.92 t/m3',
 *   optimumMoisture: 0.125,
 * });
 * spot.dryDensity.to('t/m3').toFixed(4) //=> '1.8468'
 * spot.percent.toFixed(2) //=> '96.19'
 * spot.waterToAdd?.to('kg/m3').toFixed(1) //=> '27.7'
 */
export function relativeCompaction(options: RelativeCompactionOptions): RelativeCompaction {
  const read = readOptions(options, OPTIONS);
  const { wetDensity: wet, moisture, maximumDryDensity: most, optimumMoisture: optimum } = read;
  const dry = dryOf(wet, moisture);
  const percent = percentOf(dry, most);
  const compaction = {
    dryDensity: dry,
    percent: ratioToNumber(percent),
    waterToAdd: optimum === undefined ? null : dry.times(optimum).minus(dry.times(moisture)),
    isSuspect: isSuspect(percent),
  };
  return withWorking(compaction, () => compactionSteps({ wet, moisture, dry, most }));
}

/** Dry density from wet density, exactly. Internal. */
export const dryOf = (wet: Density, moisture: Decimal): Density =>
  fromSI('density', divideRatios(exactOf(wet), addRatios(ONE_RATIO, decimalRatio(moisture))));

/** Percent of the maximum, exactly. Internal. */
export const percentOf = (dry: Density, most: Density): Ratio =>
  divideRatios(multiplyRatios(exactOf(dry), wholeRatio(100)), exactOf(most));

/** Whether a percentage is so high that the laboratory test is suspect. Internal. */
export const isSuspect = (percent: Ratio): boolean =>
  compareRatios(percent, readNumber(COMPACTION_MARK.value)) > 0;

/** The working of a relative compaction. Internal. */
export function compactionSteps(of: {
  readonly wet: Density;
  readonly moisture: Decimal;
  readonly dry: Density;
  readonly most: Density;
}): Step[] {
  const { wet, moisture, dry, most } = of;
  return [
    derivedStep({
      title: 'Dry density',
      formula: 'd = m / (1 + w)',
      given: [given('m', 'wet density', wet), given('w', 'moisture of dry mass', moisture)],
      result: given('d', 'dry density', dry),
    }),
    derivedStep({
      title: 'Relative compaction in percent',
      formula: 'R = 100 * d / D',
      given: [given('d', 'dry density', dry), given('D', 'maximum dry density', most)],
      result: given('R', 'percent', ratioToNumber(percentOf(dry, most))),
    }),
  ];
}
