import { choice, number, object, optional, quantity, text } from '../input/field.js';
import { DENSITY, FRACTION, PERCENT, PERCENT_OFF } from '../input/ranges.js';
import { readOptions, shapeOf, type Check, type Field } from '../input/shape.js';
import { TOLERANCE_SETS, type ToleranceSet } from '../sources/tolerance-sets.js';
import type { DensityInput } from '../units/construct.js';
import { ZERO } from '../units/decimal.js';
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
import { formulaStep, given } from '../working.js';
import {
  judge,
  layerCheck,
  move,
  sourceOf,
  type CheckedReading,
  type LayerCheck,
} from './layer-check.js';
import type { Limits } from './limits.js';
import { readingsOf, type NamedReadingInput } from './reading-fields.js';
import { compactionSteps, dryOf, isSuspect, percentOf } from './relative-compaction.js';
import {
  checkTolerance,
  limitsFrom,
  toleranceField,
  type Needed,
  type SetWith,
  type Tolerance,
} from './tolerance.js';

const TESTS = ['standard', 'modified', 'control-strip'] as const;

/** What a maximum dry density is from: a laboratory test of an effort, or a control strip. */
export type CompactionTest = (typeof TESTS)[number];

/** A density test in place. */
export interface DensityReadingInput extends NamedReadingInput {
  /** Density in place, water included [density], more than 0 and at most 5 t/m3. */
  readonly wetDensity: DensityInput;
  /** Water over dry mass, a fraction 0 to 1. */
  readonly moisture: number | string;
}

/** Your own minimum compaction. */
export interface MinimumPercentInput {
  /** Minimum percent of the maximum dry density, 50 to 110. */
  readonly minimumPercent: number | string;
}

/** Density tests of a layer, and the minimum. */
export interface CheckCompactionOptions {
  /** The layer, such as `base` or `subgrade`. */
  readonly layer: string;
  /** Density tests, 1 to 10 000. */
  readonly readings: readonly DensityReadingInput[];
  /**
   * Maximum dry density of the laboratory test, or the one that a control strip reached [density],
   * more than 0 and at most 5 t/m3.
   */
  readonly maximumDryDensity: DensityInput;
  /**
   * Effort of that test, or `control-strip`; see `controlStrip`. It must match the tolerance, because
   * modified densities are higher, and a strip is as dense as its machine makes it. A strip needs your
   * own minimum percent.
   */
  readonly test: CompactionTest;
  /** A set of `TOLERANCE_SETS` that limits compaction, or your own minimum percent. */
  readonly tolerance: SetWith<'compaction'> | MinimumPercentInput;
  /** Uncertainty of a percentage, either way, in percent, 0 to 20. Default: 0. */
  readonly uncertainty?: number | string;
}

const READING = shapeOf<DensityReadingInput>()({
  id: text(),
  wetDensity: quantity(DENSITY),
  moisture: number(FRACTION),
});

const LEAST = object(shapeOf<MinimumPercentInput>()({ minimumPercent: number(PERCENT) }));

const OPTIONS = shapeOf<CheckCompactionOptions>()({
  layer: text(),
  readings: readingsOf(READING),
  maximumDryDensity: quantity(DENSITY),
  test: choice(TESTS),
  tolerance: toleranceField(LEAST),
  uncertainty: optional(number(PERCENT_OFF), ZERO),
});

/** A density test compared with the minimum; its `value` is the dry density. */
export interface CheckedDensity extends CheckedReading<Density> {
  /** Percent of the maximum dry density, as the nearest float. */
  readonly percent: number;
  /** True above 105%: the laboratory test is likely of another material or another effort. */
  readonly isSuspect: boolean;
}

/**
 * The compaction of a layer compared with the minimum; the `value` of a reading is its dry density.
 */
export interface CompactionCheck extends LayerCheck<Density, CheckedDensity> {
  /** Kind of check. */
  readonly check: 'compaction';
  /** Minimum dry density. */
  readonly limits: Limits<Density, null>;
  /** Maximum dry density of the laboratory test. */
  readonly maximumDryDensity: Density;
  /** Minimum percentage of it. */
  readonly minimumPercent: number;
  /** Effort of the laboratory test, or `control-strip`. */
  readonly test: CompactionTest;
}

/**
 * Checks the compaction of a layer at each tested spot: the dry density must be at least a
 * percentage of the maximum dry density of a laboratory test, or of a control strip. One spot tells you nothing about the
 * rest of the layer. Exact: a spot on the limit passes.
 *
 * @param options - see {@link CheckCompactionOptions}
 * @returns verdict; each spot with dry density [density], percent, verdict
 * @throws `LIMIT_NOT_SET`, `CONFLICTING_FIELDS` if the set means the other test, `DUPLICATE_ID`,
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
export function checkCompaction(options: CheckCompactionOptions): CompactionCheck {
  const read = readOptions(options, OPTIONS, checkSet);
  const { layer, maximumDryDensity: largest, test, uncertainty: doubt } = read;
  const tolerance = minimumPercentOf(read.tolerance);
  const spots = read.readings.map(({ id, wetDensity: wet, moisture }) => {
    return { id, wet, moisture, dry: dryOf(wet, moisture) };
  });
  const ofLargest = (percent: Ratio) =>
    fromSI('density', divideRatios(multiplyRatios(exactOf(largest), percent), wholeRatio(100)));
  const limits = { minimum: ofLargest(tolerance.percent), maximum: null };
  const uncertainty = ofLargest(decimalRatio(doubt));
  const readings = spots.map(({ id, dry }): CheckedDensity => {
    const percent = percentOf(dry, largest);
    const judged = judge({ id, value: dry, limits, uncertainty }, () => move('compact', null));
    return { ...judged, percent: ratioToNumber(percent), isSuspect: isSuspect(percent) };
  });
  const minimumPercent = ratioToNumber(tolerance.percent);
  const isDoubtful = readings.some((reading) => reading.isSuspect);
  const parts = {
    check: 'compaction',
    subject: layer,
    maximumDryDensity: largest,
    minimumPercent,
    test,
    limits,
    origin: tolerance,
    readings,
    ...(isDoubtful ? { note: test === 'control-strip' ? PAST_STRIP : SUSPECT } : {}),
  } as const;
  return layerCheck(parts, () => [
    ...spots.flatMap((spot) =>
      compactionSteps({ ...spot, most: largest }).map((step) => ({
        ...step,
        title: `${step.title} at ${spot.id}`,
      })),
    ),
    formulaStep({
      title: 'Minimum dry density',
      formula: 'd0 = R0 * D / 100',
      given: [
        given('R0', 'minimum percent', minimumPercent),
        given('D', 'maximum dry density', largest),
      ],
      result: given('d0', 'minimum dry density', limits.minimum),
      source: sourceOf(tolerance),
    }),
  ]);
}

const SUSPECT =
  'A spot is denser than 105% of the maximum dry density. The laboratory test is likely of another material or another effort. Check it before you judge the layer.';

const PAST_STRIP =
  'A spot is denser than 105% of the control strip. The strip was likely not rolled to its end, or is of another material. Roll a new one before you judge the layer.';

type Published = NonNullable<ToleranceSet['compaction']>;

const COMPACTION: Needed<Published> = {
  words: 'compaction',
  find: ({ compaction }) => compaction,
};

/** The minimum percent, exactly as printed or as given. */
function minimumPercentOf(tolerance: Tolerance<Own>) {
  const exact: Tolerance<{ readonly percent: Ratio }> =
    tolerance.set === null
      ? { set: null, own: { percent: decimalRatio(tolerance.own.minimumPercent) } }
      : tolerance;
  return limitsFrom(exact, COMPACTION, ({ minimum }) => ({
    percent: readNumber(minimum.value),
  }));
}

type Own = typeof LEAST extends Field<infer T> ? T : never;

const checkSet: Check<typeof OPTIONS> = (reader, { tolerance, test }, path) => {
  checkTolerance(reader, tolerance, COMPACTION, [...path, 'tolerance']);
  const set = tolerance?.set ?? null;
  if (set === null || test === undefined) return;
  const meant = COMPACTION.find(TOLERANCE_SETS[set])?.test;
  if (meant === undefined || meant === test) return;
  const from = test === 'control-strip' ? 'a control strip' : `the ${test} test`;
  const message = `"${set}" is for the ${meant} test, and the maximum dry density is from ${from}. Use the density of the ${meant} test`;
  reader.fail('CONFLICTING_FIELDS', [...path, 'test'], message, { meant, test });
};
