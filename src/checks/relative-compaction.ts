import { makeReader, type Reader } from '../input/reader.js';
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
import { given, withWorking, type Step, type Worked } from '../working.js';
import { DENSITY, FRACTION } from './limits.js';

/** How dense a layer is, against the densest that the laboratory made it. */
export interface RelativeCompaction extends Worked {
  readonly dryDensity: Density;
  /** Dry density over the largest dry density, in percent, as the nearest float. */
  readonly percent: number;
  /**
   * Water to add to each volume in place to reach the optimum moisture; negative to dry it by as
   * much. Null without an optimum.
   */
  readonly waterToAdd: Density | null;
  /** More than 105 %: the reference is likely of another material or another test. */
  readonly suspect: boolean;
}

/**
 * Relative compaction: `dry density = wet density / (1 + w)`, `percent = 100 x dry / largest dry`.
 * Moisture is water over **dry** mass; taken on wet mass it makes the layer look denser than it is.
 *
 * @param options.wetDensity - in place, water included [density]
 * @param options.moisture - water over dry mass, a fraction 0 to 1
 * @param options.maximumDryDensity - from the laboratory's compaction test [density]
 * @param options.optimumMoisture - of that test, a fraction 0 to 1, for the water to add
 * @returns dry density, percent, water to add a volume [density], whether the reference is suspect
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
export function relativeCompaction(options: {
  readonly wetDensity: DensityInput;
  readonly moisture: number | string;
  readonly maximumDryDensity: DensityInput;
  readonly optimumMoisture?: number | string;
}): RelativeCompaction {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const [wet, moisture] = readSpot(reader, fields, []);
  const most = readMaximum(reader, fields);
  const optimum =
    fields['optimumMoisture'] === undefined
      ? null
      : reader.number(fields['optimumMoisture'], ['optimumMoisture'], FRACTION);
  reader.finish();
  const dry = dryOf(wet, moisture);
  const percent = percentOf(dry, most);
  const compaction = {
    dryDensity: dry,
    percent: ratioToNumber(percent),
    waterToAdd: optimum === null ? null : dry.times(optimum.minus(moisture)),
    suspect: isSuspect(percent),
  };
  return withWorking(compaction, () => compactionSteps({ wet, moisture, dry, most }));
}

/** Reads the wet density and the moisture of a spot. Internal. */
export function readSpot(
  reader: Reader,
  fields: Readonly<Record<string, unknown>>,
  path: readonly (string | number)[],
): readonly [Density, Decimal] {
  return [
    reader.quantity('density', fields['wetDensity'], [...path, 'wetDensity'], DENSITY),
    reader.number(fields['moisture'], [...path, 'moisture'], FRACTION),
  ];
}

/** Reads the largest dry density. Internal. */
export const readMaximum = (reader: Reader, fields: Readonly<Record<string, unknown>>): Density =>
  reader.quantity('density', fields['maximumDryDensity'], ['maximumDryDensity'], DENSITY);

/** Dry density of a wet one, exactly. Internal. */
export const dryOf = (wet: Density, moisture: Decimal): Density =>
  fromSI('density', divideRatios(exactOf(wet), addRatios(ONE_RATIO, decimalRatio(moisture))));

/** Percent of the largest, exactly. Internal. */
export const percentOf = (dry: Density, most: Density): Ratio =>
  divideRatios(multiplyRatios(exactOf(dry), wholeRatio(100)), exactOf(most));

/** Whether a percentage says more about the reference than about the layer. Internal. */
export const isSuspect = (percent: Ratio): boolean =>
  compareRatios(percent, readNumber(COMPACTION_MARK.value)) > 0;

/** How a relative compaction was come by. Internal. */
export function compactionSteps(of: {
  readonly wet: Density;
  readonly moisture: Decimal;
  readonly dry: Density;
  readonly most: Density;
}): Step[] {
  const { wet, moisture, dry, most } = of;
  return [
    {
      title: 'Dry density',
      formula: 'd = m / (1 + w)',
      given: [given('m', 'wet density', wet), given('w', 'moisture of dry mass', moisture)],
      result: given('d', 'dry density', dry),
      source: 'derived',
    },
    {
      title: 'Relative compaction in percent',
      formula: 'R = 100 d / D',
      given: [given('d', 'dry density', dry), given('D', 'largest dry density', most)],
      result: given('R', 'percent', ratioToNumber(percentOf(dry, most))),
      source: 'derived',
    },
  ];
}
