import { object, optional, quantity } from '../input/field.js';
import { ELEVATION, SITE_LENGTH, TOLERANCE } from '../input/ranges.js';
import { readOptions, shapeOf, type Values } from '../input/shape.js';
import { cautionsFor, type Cautioned } from '../sources/cautions.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Angle, type Length } from '../units/quantity.js';
import { divideRatios } from '../units/ratio.js';
import { angleOfSlope } from '../units/slope-angle.js';
import { NO_LENGTH } from '../units/zero.js';
import { verdictOf, worstVerdict, type Verdict } from '../verdict.js';
import { formulaStep, given, type Step, withWorking, type Worked } from '../working.js';
import { accuracy, beamSlope, type AccuracyInput } from './accuracy.js';
import { rootSumOfSquares } from './root-sum-of-squares.js';

/** The two marks of one axis, before and after a half turn. */
export interface ReversalMarksInput {
  /** Height of the mark before the half turn [length], up to 10 km either way. */
  readonly first: LengthInput;
  /** Height of the mark after the half turn [length], up to 10 km either way. */
  readonly second: LengthInput;
}

/** A half-turn test of a rotating laser. */
export interface LaserReversalOptions {
  /** From instrument to target [length], more than 0 and at most 10 km. */
  readonly distance: LengthInput;
  /** Marks of one axis. */
  readonly x: ReversalMarksInput;
  /** Marks of the other axis. Default: not tested. */
  readonly y?: ReversalMarksInput;
  /** Accuracy of each axis, as the maker states it. */
  readonly accuracy: AccuracyInput;
  /**
   * Uncertainty of one mark [length], 0 to 10 m; the two marks add as root sum of squares. Default:
   * 0.
   */
  readonly uncertainty?: LengthInput;
}

const MARKS = shapeOf<ReversalMarksInput>()({
  first: quantity(ELEVATION),
  second: quantity(ELEVATION),
});

const OPTIONS = shapeOf<LaserReversalOptions>()({
  distance: quantity(SITE_LENGTH),
  x: object(MARKS),
  y: optional(object(MARKS)),
  accuracy,
  uncertainty: optional(quantity(TOLERANCE), NO_LENGTH),
});

/** The error of one axis. */
export interface AxisError {
  /** First mark less second. */
  readonly difference: Length;
  /**
   * Half of the difference: the error of the beam over the distance, positive if the first mark is
   * high.
   */
  readonly error: Length;
  /** The error as an angle. */
  readonly angle: Angle;
  /** Verdict on the axis. */
  readonly verdict: Verdict;
}

/** A rotating laser tested by half turns. */
export interface LaserReversal extends Cautioned, Worked {
  /** Error of the x axis. */
  readonly x: AxisError;
  /** Error of the y axis; null if it was not tested. */
  readonly y: AxisError | null;
  /** Maximum difference of two marks within the accuracy. */
  readonly maximumDifference: Length;
  /** The worse verdict of the axes. */
  readonly verdict: Verdict;
}

/**
 * 180-degree test of a rotating laser: mark the beam on one target, turn the instrument by half a
 * turn and mark it again. `error = (first - second) / 2` over the distance; the marks may differ by
 * `2 D accuracy`. Test both axes over a long distance. A level beam tells you nothing about a
 * dialled-in grade.
 *
 * @param options - see {@link LaserReversalOptions}
 * @returns difference and error [length], angle and verdict for each axis, maximum difference of two
 *   marks [length], cautions
 * @throws `NOT_POSITIVE`, `NEGATIVE`, `CONFLICTING_FIELDS`, `REQUIRED`, `OUT_OF_RANGE` and the reading
 *   codes
 * @source laser-reversal
 * @example
 * const test = laserReversal({
 *   distance: '30 m',
 *   x: { first: '1.503 m', second: '1.497 m' },
 *   accuracy: { error: '0.05 mm', over: '1 m' },
 * });
 * test.maximumDifference.to('mm').toString() //=> '3'
 * test.x.error.to('mm').toString() //=> '3'
 * test.verdict //=> 'fail'
 */
export function laserReversal(options: LaserReversalOptions): LaserReversal {
  const read = readOptions(options, OPTIONS);
  const { distance, uncertainty } = read;
  const slope = beamSlope(read.accuracy);
  const maximumDifference = distance.times(2).times(slope);
  const judge = (marks: Marks) => axisError(marks, { distance, maximumDifference, uncertainty });
  const x = judge(read.x);
  const y = read.y === undefined ? null : judge(read.y);
  const verdict = worstVerdict(y === null ? [x.verdict] : [x.verdict, y.verdict]);
  const cautions = cautionsFor('laser');
  return withWorking({ x, y, maximumDifference, verdict, cautions }, () => [
    formulaStep({
      title: 'Maximum difference of two marks',
      formula: 'd = 2 * D * a',
      given: [given('D', 'distance', distance), given('a', 'error over distance', slope)],
      result: given('d', 'difference', maximumDifference),
      source: 'laser-reversal',
    }),
    axisStep('x', read.x, x),
    ...(read.y === undefined || y === null ? [] : [axisStep('y', read.y, y)]),
  ]);
}

type Marks = Values<typeof MARKS>;

interface Basis {
  readonly distance: Length;
  readonly maximumDifference: Length;
  readonly uncertainty: Length;
}

function axisError({ first, second }: Marks, basis: Basis): AxisError {
  const difference = first.minus(second);
  const error = difference.dividedBy(2);
  const tilt = fromSI('slope', divideRatios(exactOf(error), exactOf(basis.distance)));
  const margin = basis.maximumDifference.minus(difference.abs());
  const ofTwo = rootSumOfSquares([basis.uncertainty, basis.uncertainty]);
  const verdict = verdictOf(margin, ofTwo);
  return { difference, error, angle: angleOfSlope(tilt), verdict };
}

const axisStep = (name: 'x' | 'y', { first, second }: Marks, { error }: AxisError): Step =>
  formulaStep({
    title: `Error of the ${name} axis`,
    formula: 'e = (m1 - m2) / 2',
    given: [given('m1', 'first mark', first), given('m2', 'second mark', second)],
    result: given('e', 'error over the distance', error),
    source: 'laser-reversal',
  });
