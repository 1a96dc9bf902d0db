import { makeReader, type Reader } from '../input/reader.js';
import type { FieldPath } from '../errors.js';
import type { DensityInput } from '../units/construct.js';
import { exactOf, fromSI, type Density } from '../units/quantity.js';
import {
  decimalRatio,
  divideRatios,
  multiplyRatios,
  ratioToNumber,
  wholeRatio,
  type Ratio,
} from '../units/ratio.js';
import { readNumber } from '../units/read-number.js';
import { given } from '../working.js';
import {
  judge,
  layerCheck,
  move,
  sourceOf,
  type CheckedReading,
  type LayerCheck,
} from './layer-check.js';
import { PERCENT, PERCENT_OFF } from './limits.js';
import { readReadings } from './read-readings.js';
import {
  compactionSteps,
  dryOf,
  isSuspect,
  percentOf,
  readMaximum,
  readSpot,
} from './relative-compaction.js';
import { readTolerance, type SetWith } from './tolerance.js';

/** The compaction test that a largest dry density comes from: standard or modified effort. */
export type CompactionTest = 'standard' | 'modified';

/** A density test in place. */
export interface DensityReadingInput {
  readonly id: string;
  /** In place, water included. */
  readonly wetDensity: DensityInput;
  /** Water over dry mass, a fraction 0 to 1. */
  readonly moisture: number | string;
}

/** A density test against the least; its `value` is the dry density. */
export interface CheckedDensity extends CheckedReading<Density> {
  /** Of the largest dry density, as the nearest float. */
  readonly percent: number;
  /** More than 105 %: the reference is likely of another material or another test. */
  readonly suspect: boolean;
}

/** The compaction of a layer; the `value` of a reading is its dry density. */
export interface CompactionCheck extends LayerCheck<Density> {
  readonly check: 'compaction';
  readonly limits: { readonly least: Density; readonly most: null };
  readonly maximumDryDensity: Density;
  /** Least percentage of it. */
  readonly leastPercent: number;
  readonly test: CompactionTest;
  readonly readings: readonly CheckedDensity[];
  readonly outOfTolerance: readonly CheckedDensity[];
}

/**
 * Checks the compaction of a layer at each spot that was tested: dry density at least a percentage of
 * the largest dry density of the laboratory's test. One spot says nothing about the rest of a layer.
 * Exact: a spot of just that percentage passes.
 *
 * @param options.layer - such as `base` or `subgrade`
 * @param options.readings - each `id` once, `wetDensity` in place [density], `moisture` of dry mass, a
 *   fraction 0 to 1
 * @param options.maximumDryDensity - from the laboratory's test [density]
 * @param options.test - `standard` or `modified`, the effort of that test; it has to be the one that
 *   the tolerance means, for modified densities are higher
 * @param options.tolerance - a set of `TOLERANCE_SETS` that asks for compaction, or your own
 *   `leastPercent`, 50 to 110
 * @param options.uncertainty - how far a percentage can be off, either way, in percent, default none
 * @returns verdict; each spot with dry density [density], percent, verdict
 * @throws `LIMIT_NOT_SET`, `CONFLICTING_FIELDS` where the set means the other test, `DUPLICATE_ID`,
 *   `UNKNOWN_CHOICE`, `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`, `EMPTY_LIST` and the reading codes
 * @source paver-tolerances
 * @source derived
 * @example
 * const check = checkCompaction({
 *   layer: 'base',
 *   readings: [{ id: 'gate', wetDensity: '2.05 t/m3', moisture: 0.11 }],
 *   maximumDryDensity: '1.92 t/m3',
 *   test: 'standard',
 *   tolerance: 'paver-guide-mm',
 * });
 * check.verdict //=> 'fail'
 * check.readings[0]?.percent.toFixed(2) //=> '96.19'
 */
export function checkCompaction(options: {
  readonly layer: string;
  readonly readings: readonly DensityReadingInput[];
  readonly maximumDryDensity: DensityInput;
  readonly test: CompactionTest;
  readonly tolerance: SetWith<'compaction'> | { readonly leastPercent: number | string };
  readonly uncertainty?: number | string;
}): CompactionCheck {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const layer = reader.text(fields['layer'], ['layer']);
  const spots = readReadings(reader, fields['readings'], (row, path) => {
    const [wet, moisture] = readSpot(reader, row, path);
    return { wet, moisture, dry: dryOf(wet, moisture) };
  });
  const largest = readMaximum(reader, fields);
  const test = reader.choice(fields['test'], ['test'], ['standard', 'modified']);
  const tolerance = readLeast(reader, fields['tolerance'], test);
  const doubt = reader.number(fields['uncertainty'] ?? 0, ['uncertainty'], PERCENT_OFF);
  reader.finish();
  const ofLargest = (percent: Ratio) =>
    fromSI('density', divideRatios(multiplyRatios(exactOf(largest), percent), wholeRatio(100)));
  const limits = { least: ofLargest(tolerance.percent), most: null };
  const uncertainty = ofLargest(decimalRatio(doubt));
  const readings = spots.map(({ id, dry }): CheckedDensity => {
    const percent = percentOf(dry, largest);
    const judged = judge({ id, value: dry, limits, uncertainty }, () => move('compact', null));
    return { ...judged, percent: ratioToNumber(percent), suspect: isSuspect(percent) };
  });
  const leastPercent = ratioToNumber(tolerance.percent);
  const isDoubtful = readings.some(({ suspect }) => suspect);
  const parts = {
    check: 'compaction',
    subject: layer,
    maximumDryDensity: largest,
    leastPercent,
    test,
    limits,
    origin: tolerance,
    readings,
    ...(isDoubtful ? { note: SUSPECT } : {}),
  } as const;
  return layerCheck(parts, () => [
    ...spots.flatMap((spot) =>
      compactionSteps({ ...spot, most: largest }).map((step) => ({
        ...step,
        title: `${step.title} at ${spot.id}`,
      })),
    ),
    {
      title: 'Least dry density',
      formula: 'd0 = R0 D / 100',
      given: [
        given('R0', 'least percent', leastPercent),
        given('D', 'largest dry density', largest),
      ],
      result: given('d0', 'least dry density', limits.least),
      source: sourceOf(tolerance),
    },
  ]);
}

const SUSPECT =
  'A spot is denser than 105 % of the reference: the reference is likely of another material or another test. Check it before judging the layer.';

function readLeast(reader: Reader, value: unknown, test: CompactionTest) {
  const field = { reader, value, words: 'compaction' };
  return readTolerance(field, {
    find: (set) => set.compaction,
    published: ({ least, test: meant }) => {
      if (meant !== test) {
        const words = `the set means the ${meant} test, the largest dry density is of the ${test} one`;
        reader.fail('CONFLICTING_FIELDS', ['test'], words, { meant, test });
      }
      return { percent: readNumber(least.value) };
    },
    readOwn: (own, path: FieldPath) => {
      const at = [...path, 'leastPercent'];
      return { percent: decimalRatio(reader.number(own['leastPercent'], at, PERCENT)) };
    },
    standIn: { percent: wholeRatio(100) },
  });
}
