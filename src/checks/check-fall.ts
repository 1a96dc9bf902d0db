import { quantity, text } from '../input/field.js';
import { FALL, LEVEL_DIFFERENCE, SITE_LENGTH } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { cautionsFor } from '../sources/cautions.js';
import { COVERAGE_FACTOR } from '../sources/levelling-figures.js';
import type { MinimumAndMaximum } from '../sources/tolerance-sets.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Length, type Slope } from '../units/quantity.js';
import { divideRatios, wholeRatio, type Ratio } from '../units/ratio.js';
import { squareRoot } from '../units/root.js';
import { derivedStep, given, published, type Step } from '../working.js';
import {
  judge,
  layerCheck,
  move,
  sourceOf,
  type CheckedReading,
  type LayerCheck,
} from './layer-check.js';
import { betweenField, marginOf, type BetweenInput, type Limits } from './limits.js';
import { marginStep } from './margin-step.js';
import { lengthUncertainty, readingsOf, type NamedReadingInput } from './reading-fields.js';
import {
  checkSetFor,
  limitsBetween,
  toleranceField,
  type Needed,
  type SetWith,
} from './tolerance.js';

/** A fall as measured between two points. */
export interface FallReadingInput extends NamedReadingInput {
  /** Drop of the surface over the run, + in the right direction [length], up to 20 m either way. */
  readonly fall: LengthInput;
  /** Plan distance between the two points [length], more than 0 and at most 10 km. */
  readonly run: LengthInput;
}

/** Falls of a surface, and their limits. */
export interface CheckFallOptions {
  /** The surface, such as `pavers`. */
  readonly layer: string;
  /** Falls, 1 to 10 000. */
  readonly readings: readonly FallReadingInput[];
  /**
   * A set of `TOLERANCE_SETS` that limits slopes, or your own limits [slope]. Without a minimum, the
   * slope may not be steeper than the maximum either way.
   */
  readonly tolerance: SetWith<'slope'> | BetweenInput<'slope'>;
  /** Standard uncertainty of one height [length], 0 to 10 m. Default: 0. */
  readonly standardUncertainty?: LengthInput;
}

const READING = shapeOf<FallReadingInput>()({
  id: text(),
  fall: quantity(LEVEL_DIFFERENCE),
  run: quantity(SITE_LENGTH),
});

const OPTIONS = shapeOf<CheckFallOptions>()({
  layer: text(),
  readings: readingsOf(READING),
  tolerance: toleranceField(betweenField(FALL)),
  standardUncertainty: lengthUncertainty,
});

/** A slope, with its uncertainty from the two heights. */
export interface CheckedFall extends CheckedReading<Slope> {
  /** Drop of the surface over the run. */
  readonly fall: Length;
  /** Plan distance between the two points. */
  readonly run: Length;
  /** Uncertainty of the slope, either way, about 95%. */
  readonly uncertainty: Slope;
}

/**
 * Slopes of a surface compared with their limits; the `value` of a reading is its slope, + in the
 * right direction.
 */
export interface FallCheck extends LayerCheck<Slope, CheckedFall> {
  /** Kind of check. */
  readonly check: 'fall';
}

/**
 * Checks slopes measured as a drop over a run, with the uncertainty of the two heights:
 * `i = d / L`, `u = k sqrt(2) s / L` with s the standard uncertainty of one height and k the factor
 * `COVERAGE_FACTOR`. `pass` if the whole band `i - u` to `i + u` is within the limits, `fail` if none
 * of it is, else `unclear`. Exact except for the root, which is rounded to 40 digits. The run is taken
 * as exact: an error of 1% in it changes the slope by 1% of its value.
 *
 * @param options - see {@link CheckFallOptions}
 * @returns verdict; each reading with its slope, margin and uncertainty [slope], verdict, and how far
 *   to raise or lower the low end; cautions
 * @throws `LIMIT_NOT_SET`, `LIMITS_CONTRADICT`, `DUPLICATE_ID`, `NOT_POSITIVE`, `NEGATIVE`,
 *   `OUT_OF_RANGE`, `EMPTY_LIST` and the reading codes
 * @source paver-tolerances
 * @source derived
 * @source nist-tn1297
 * @example
 * const readings = [{ id: 'drive', fall: '60 mm', run: '3 m' }];
 * const check = checkFall({
 *   layer: 'pavers',
 *   readings,
 *   tolerance: 'paver-guide-mm',
 *   standardUncertainty: '2 mm',
 * });
 * check.verdict //=> 'unclear'
 * check.readings[0]?.uncertainty.to('percent').toFixed(2) //=> '0.19'
 * checkFall({ layer: 'pavers', readings, tolerance: 'paver-guide-mm' }).verdict //=> 'pass'
 */
export function checkFall(options: CheckFallOptions): FallCheck {
  const read = readOptions(options, OPTIONS, checkSet);
  const { layer, readings: rows, standardUncertainty: ofHeight } = read;
  const { limits: asked, origin } = limitsBetween('slope', read.tolerance, FALL_OF_SURFACE);
  const limits = { ...asked, minimum: asked.minimum ?? asked.maximum?.negated() ?? null };
  const readings = rows.map(({ id, fall, run }): CheckedFall => {
    const value = slopeOf(fall, exactOf(run));
    const uncertainty = uncertaintyOf(ofHeight, run);
    const judged = judge({ id, value, limits, uncertainty }, () => {
      const isFlat = limits.minimum !== null && value.compare(limits.minimum) < 0;
      return move(isFlat ? 'lower' : 'raise', marginOf(value, limits).times(run));
    });
    return { ...judged, fall, run, uncertainty };
  });
  const parts = {
    check: 'fall',
    subject: layer,
    limits,
    origin,
    readings,
    cautions: cautionsFor('drainage'),
  } as const;
  return layerCheck(parts, () =>
    readings.flatMap((reading) =>
      fallSteps(reading, ofHeight, { limits, source: sourceOf(origin) }),
    ),
  );
}

const FALL_OF_SURFACE: Needed<MinimumAndMaximum> = { words: 'slope', find: ({ slope }) => slope };

const checkSet = checkSetFor(FALL_OF_SURFACE);

/** Coverage factor of the uncertainty, for about 95%. */
const COVERAGE = Number(COVERAGE_FACTOR.value);

const slopeOf = (rise: Length, run: Ratio): Slope =>
  fromSI('slope', divideRatios(exactOf(rise), run));

/** `2 sqrt(2) s / L`: two heights, each uncertain by s. */
const uncertaintyOf = (ofHeight: Length, run: Length): Slope =>
  slopeOf(ofHeight, divideRatios(exactOf(run), squareRoot(wholeRatio(2)))).times(COVERAGE);

function fallSteps(
  reading: CheckedFall,
  ofHeight: Length,
  { limits, source }: { limits: Limits<Slope | null>; source: Step['source'] },
): Step[] {
  const { id, fall, run, value, uncertainty, margin } = reading;
  const slope = given('g', 'slope', value);
  return [
    derivedStep({
      title: `Slope at ${id}`,
      formula: 'g = d / L',
      given: [given('d', 'fall', fall), given('L', 'run', run)],
      result: slope,
    }),
    derivedStep({
      title: `Uncertainty of the slope at ${id}, about 95%`,
      formula: 'u = k * sqrt(2) * s / L',
      given: [
        published('k', 'coverage factor', COVERAGE, COVERAGE_FACTOR.source),
        given('s', 'standard uncertainty of a height', ofHeight),
        given('L', 'run', run),
      ],
      result: given('u', 'uncertainty', uncertainty),
    }),
    marginStep({
      title: `Slope at ${id} against its limits`,
      value: slope,
      limits,
      margin,
      source,
    }),
  ];
}
