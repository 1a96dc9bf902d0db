import { number, optional, quantity, text } from '../input/field.js';
import { SHARE_OR_NONE, SMALL } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import type { SourceId } from '../sources/catalogue.js';
import type { MinimumAndMaximum } from '../sources/tolerance-sets.js';
import { max, min, sum } from '../units/aggregate.js';
import type { LengthInput } from '../units/construct.js';
import { ONE, type Decimal } from '../units/decimal.js';
import type { Length } from '../units/quantity.js';
import { divideRatios, ratioToNumber, wholeRatio } from '../units/ratio.js';
import type { Verdict } from '../verdict.js';
import { formulaStep, given, type Step } from '../working.js';
import { judge, layerCheck, moveToLimit, sourceOf, type LayerCheck } from './layer-check.js';
import { betweenField, type BetweenInput, type Limits } from './limits.js';
import { lengthUncertainty, readingsOf, type NamedReadingInput } from './reading-fields.js';
import {
  checkSetFor,
  limitsBetween,
  toleranceField,
  type Needed,
  type SetWith,
} from './tolerance.js';

/** A joint as measured. */
export interface JointReadingInput extends NamedReadingInput {
  /** Width of the joint [length], 0 to 1 m. */
  readonly width: LengthInput;
}

/** Joints, and their limits. */
export interface CheckJointWidthOptions {
  /** Joints, 1 to 10 000. */
  readonly readings: readonly JointReadingInput[];
  /** A set of `TOLERANCE_SETS` that limits joints, or your own limits. */
  readonly tolerance: SetWith<'joint'> | BetweenInput;
  /** Minimum share of joints within the limits, 0 to 1. Default: 1, all of them. */
  readonly minimumShare?: number | string;
  /** Uncertainty of a width, either way [length], 0 to 10 m. Default: 0. */
  readonly uncertainty?: LengthInput;
}

const READING = shapeOf<JointReadingInput>()({ id: text(), width: quantity(SMALL) });

const OPTIONS = shapeOf<CheckJointWidthOptions>()({
  readings: readingsOf(READING),
  tolerance: toleranceField(betweenField(SMALL)),
  minimumShare: optional(number(SHARE_OR_NONE), ONE),
  uncertainty: lengthUncertainty,
});

/** Joint widths compared with their limits; the `value` of a reading is its width. */
export interface JointWidthCheck extends LayerCheck<Length> {
  /** Kind of check. */
  readonly check: 'joint-width';
  /** Share of joints within the limits, 0 to 1; those too close to tell are not counted. */
  readonly share: number;
  /** The narrowest joint. */
  readonly narrowest: Length;
  /** The widest joint. */
  readonly widest: Length;
  /** Average width. */
  readonly average: Length;
}

/**
 *
 * Checks joint widths: `minimum <= w <= maximum` for each joint, and the share of joints within the limits.
 * Exact: a joint on a limit passes. The layer passes if the share is at least `minimumShare`.
 *
 * @param options - see {@link CheckJointWidthOptions}
 * @returns verdict, share, narrowest, widest and average width [length]; each joint with margin,
 * verdict and how far to open or close it to reach the nearest limit
 * @throws `LIMIT_NOT_SET`, `LIMITS_CONTRADICT`, `DUPLICATE_ID`, `NEGATIVE`, `OUT_OF_RANGE`,
 *   `EMPTY_LIST` and the reading codes
 * @source paver-tolerances
 * @source ufgs-02780
 * @example
 * const check = checkJointWidth({
 *   readings: [
 *     { id: 'a', width: '2 mm' },
 *     { id: 'b', width: '3 mm' },
 *     { id: 'c', width: '6 mm' },
 *   ],
 *   tolerance: 'paver-guide-mm',
 * });
 * check.share.toFixed(2) //=> '0.67'
 * check.outOfTolerance.map(({ id, move }) => `${id}: ${describeCheckMove(move, { as: 'mm' })}`) //=> ['c: close up 1 mm']
 */
export function checkJointWidth(options: CheckJointWidthOptions): JointWidthCheck {
  const read = readOptions(options, OPTIONS, checkSet);
  const { readings: rows, minimumShare, uncertainty } = read;
  const { limits, origin } = limitsBetween('length', read.tolerance, JOINT_WIDTH);
  const readings = rows.map(({ id, width }) =>
    judge({ id, value: width, limits, uncertainty }, moveToLimit(limits, 'close', 'open')),
  );
  const count = (...verdicts: readonly Verdict[]) =>
    readings.filter(({ verdict }) => verdicts.includes(verdict)).length;
  const within = count('pass');
  const widths = readings.map(({ value }) => value);
  const parts = {
    check: 'joint-width',
    subject: 'joints',
    share: ratioToNumber(divideRatios(wholeRatio(within), wholeRatio(readings.length))),
    narrowest: min(widths),
    widest: max(widths),
    average: sum(widths).dividedBy(widths.length),
    limits,
    origin,
    readings,
    verdict: verdictOnShare(minimumShare.times(readings.length), {
      within,
      atBest: count('pass', 'unclear'),
    }),
  } as const;
  return layerCheck(parts, () => [
    shareStep({ widths, limits, uncertainty, share: parts.share, source: sourceOf(origin) }),
  ]);
}

interface Shown {
  readonly widths: readonly Length[];
  readonly limits: Limits<Length | null>;
  readonly uncertainty: Length;
  readonly share: number;
  readonly source: SourceId;
}

/** The share of joints whose margin to each limit is the uncertainty or more. */
function shareStep({
  widths,
  limits: { minimum, maximum },
  uncertainty,
  share,
  source,
}: Shown): Step {
  const within = [
    ...(minimum === null ? [] : ['j[i] - j0 >= u']),
    ...(maximum === null ? [] : ['j1 - j[i] >= u']),
  ].join(' and ');
  return formulaStep({
    title: 'Share of joints within the limits',
    formula: `p = sum(${within} ? 1 : 0) / count(j)`,
    given: [
      given('j', 'width of each joint', widths),
      ...(minimum === null ? [] : [given('j0', 'minimum width', minimum)]),
      ...(maximum === null ? [] : [given('j1', 'maximum width', maximum)]),
      given('u', 'uncertainty of a width', uncertainty),
    ],
    result: given('p', 'share', share),
    source,
  });
}

const JOINT_WIDTH: Needed<MinimumAndMaximum> = { words: 'joint width', find: ({ joint }) => joint };

const checkSet = checkSetFor(JOINT_WIDTH);

/**
 * Pass if enough joints are surely within limits, unclear if only the uncertain ones could make it,
 * else fail.
 */
function verdictOnShare(
  needed: Decimal,
  { within, atBest }: { readonly within: number; readonly atBest: number },
): Verdict {
  if (needed.lte(within)) return 'pass';
  return needed.lte(atBest) ? 'unclear' : 'fail';
}
