import { optional, quantity } from '../../input/field.js';
import { SMALL, TOLERANCE_OF_SOME, UNIT_SIDE } from '../../input/ranges.js';
import { readOptions, shapeOf, type Check } from '../../input/shape.js';
import type { LengthInput } from '../../units/construct.js';
import { exactOf, type Length } from '../../units/quantity.js';
import {
  addRatios,
  divideRatios,
  multiplyRatios,
  signOfRatio,
  subtractRatios,
  wholeRatio,
  type Ratio,
} from '../../units/ratio.js';
import { squareRoot } from '../../units/root.js';
import { timesRatio } from '../../units/times-ratio.js';
import { NO_LENGTH } from '../../units/zero.js';
import { derivedStep, given, type Step, withWorking, type Worked } from '../../working.js';
import { wholeDown } from '../whole-number.js';

/** Errors of the joints, and the tolerance of the bond line. */
export interface BondDriftOptions {
  /**
   * Error that every joint has in one direction, too wide or too narrow [length], 0 to 1 m.
   * Default: 0.
   */
  readonly bias?: LengthInput;
  /**
   * Scatter of the joints, one standard deviation [length], 0 to 1 m. Give twice as much to be
   * right about nineteen times out of twenty. Default: 0.
   */
  readonly scatter?: LengthInput;
  /** Tolerance of the bond line [length], more than 0 and at most 10 m. */
  readonly tolerance: LengthInput;
  /** One course, paver and joint [length], more than 0 and at most 5 m. */
  readonly module: LengthInput;
}

const OPTIONS = shapeOf<BondDriftOptions>()({
  bias: optional(quantity(SMALL), NO_LENGTH),
  scatter: optional(quantity(SMALL), NO_LENGTH),
  tolerance: quantity(TOLERANCE_OF_SOME),
  module: quantity(UNIT_SIDE),
});

/** Courses to lay before you pull the next line. */
export interface BondDrift extends Worked {
  /** Courses between two lines; 0 if one course alone drifts too far. */
  readonly courses: number;
  /** Distance between two lines. */
  readonly distance: Length;
  /** Drift after that many courses. */
  readonly drift: Length;
}

/**
 *
 * How often to pull a line if joints are all slightly too wide, or uneven. After n courses the
 * drift is `n bias + scatter sqrt(n)`; n is the largest whole number with a drift within the
 * tolerance.
 *
 * @param options - see {@link BondDriftOptions}
 * @returns courses between lines, their distance, the drift after them
 * @throws `REQUIRED` where neither bias nor scatter is more than zero, `CAPACITY_EXCEEDED`,
 *   `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const line = bondDrift({ bias: '0.4 mm', tolerance: '13 mm', module: '103 mm' });
 * line.courses //=> 32
 * line.distance.to('m').toString() //=> '3.296'
 */
export function bondDrift(options: BondDriftOptions): BondDrift {
  const { bias, scatter, tolerance, module } = readOptions(options, OPTIONS, checkJoints);
  const courses = coursesWithin(exactOf(bias), exactOf(scatter), exactOf(tolerance));
  const drift = driftAfter(courses, bias, scatter);
  return withWorking({ courses, distance: module.times(courses), drift }, () => [
    coursesStep({ bias, scatter, tolerance }, courses),
    derivedStep({
      title: 'Drift after these courses',
      formula: 'd = n * b + s * sqrt(n)',
      given: [
        given('n', 'courses', courses),
        given('b', 'bias of a joint', bias),
        given('s', 'scatter of a joint', scatter),
      ],
      result: given('d', 'drift', drift),
    }),
  ]);
}

interface Joints {
  readonly bias: Length;
  readonly scatter: Length;
  readonly tolerance: Length;
}

function coursesStep({ bias, scatter, tolerance }: Joints, courses: number): Step {
  const [b, s] = [given('b', 'bias of a joint', bias), given('s', 'scatter of a joint', scatter)];
  const [formula, from] = scatter.isZero()
    ? ['n = floor(tol / b)', [b]]
    : bias.isZero()
      ? ['n = floor((tol / s)^2)', [s]]
      : ['n = floor(((sqrt(s^2 + 4 * b * tol) - s) / (2 * b))^2)', [b, s]];
  return derivedStep({
    title: 'Courses between lines: the most with n * b + s * sqrt(n) <= tol',
    formula,
    given: [...from, given('tol', 'tolerance', tolerance)],
    result: given('n', 'courses', courses),
  });
}

const checkJoints: Check<typeof OPTIONS> = (reader, { bias, scatter }, path) => {
  if (bias?.isZero() !== true || scatter?.isZero() !== true) return;
  const message =
    'missing. Write the bias of the joints, such as "1/64 in", their scatter, or both';
  reader.fail('REQUIRED', [...path, 'bias'], message);
};

/** Positive root of `b k^2 + s k = tol`, squared and rounded down; exact without scatter. */
function coursesWithin(bias: Ratio, scatter: Ratio, tolerance: Ratio): number {
  if (signOfRatio(scatter) === 0) return wholeDown(tolerance, bias);
  if (signOfRatio(bias) === 0) {
    const reach = divideRatios(tolerance, scatter);
    return wholeDown(multiplyRatios(reach, reach));
  }
  const twice = wholeRatio(2);
  const four = multiplyRatios(wholeRatio(4), multiplyRatios(bias, tolerance));
  const root = squareRoot(addRatios(multiplyRatios(scatter, scatter), four));
  const k = divideRatios(subtractRatios(root, scatter), multiplyRatios(twice, bias));
  return wholeDown(multiplyRatios(k, k));
}

function driftAfter(courses: number, bias: Length, scatter: Length): Length {
  return bias.times(courses).plus(timesRatio(scatter, squareRoot(wholeRatio(courses))));
}
