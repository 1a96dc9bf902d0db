import { makeReader } from '../input/reader.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, type Length } from '../units/quantity.js';
import {
  addRatios,
  divideRatios,
  multiplyRatios,
  signOfRatio,
  subtractRatios,
  wholeRatio,
  type Ratio,
} from '../units/ratio.js';
import { squareRoot } from '../units/root.js';
import { given, withWorking, type Worked } from '../working.js';
import { timesRatio } from './exact.js';
import { NO_LENGTH, RUN_OF_SOME, SHORT, UNIT_SIDE } from './limits.js';
import { wholeDown } from './whole-number.js';

/** How many courses a pattern may run before a line is pulled again. */
export interface BondDrift extends Worked {
  /** Courses between two lines; 0 where one course alone drifts too far. */
  readonly courses: number;
  /** The same as a distance. */
  readonly distance: Length;
  /** Drift after that many courses. */
  readonly drift: Length;
}

/**
 * How often to pull a line so that joints which are all a little too wide, or uneven, do not carry the
 * pattern off: after n courses the drift is `n bias + scatter sqrt(n)`, and n is the largest whole
 * number for which it is within the tolerance.
 *
 * @param options.bias - how much too wide or too narrow every joint is [length], default 0
 * @param options.scatter - how uneven joints are, one standard deviation [length], default 0; give
 *   twice as much to be right about nineteen times out of twenty
 * @param options.tolerance - how far the bond line may be off [length]
 * @param options.module - one course: unit and joint [length]
 * @returns courses between lines, their distance, the drift by then
 * @throws `REQUIRED` where neither bias nor scatter is more than zero, `CAPACITY_EXCEEDED`, `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const line = bondDrift({ bias: '0.4 mm', tolerance: '13 mm', module: '103 mm' });
 * line.courses //=> 32
 * line.distance.to('m').toString() //=> '3.296'
 */
export function bondDrift(options: {
  readonly bias?: LengthInput;
  readonly scatter?: LengthInput;
  readonly tolerance: LengthInput;
  readonly module: LengthInput;
}): BondDrift {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const bias = reader.quantity('length', fields['bias'] ?? NO_LENGTH, ['bias'], SHORT);
  const scatter = reader.quantity('length', fields['scatter'] ?? NO_LENGTH, ['scatter'], SHORT);
  const tolerance = reader.quantity('length', fields['tolerance'], ['tolerance'], RUN_OF_SOME);
  const module = reader.quantity('length', fields['module'], ['module'], UNIT_SIDE);
  if (bias.isZero() && scatter.isZero()) {
    reader.fail('REQUIRED', ['bias'], 'give the bias of the joints, their scatter, or both');
  }
  reader.finish();

  const courses = coursesWithin(exactOf(bias), exactOf(scatter), exactOf(tolerance));
  const drift = driftAfter(courses, bias, scatter);
  return withWorking({ courses, distance: module.times(courses), drift }, () => [
    {
      title: 'Courses between lines',
      formula: 'n = largest whole number with n b + s sqrt(n) <= tol',
      given: [
        given('b', 'bias of a joint', bias),
        given('s', 'scatter of a joint', scatter),
        given('tol', 'tolerance', tolerance),
      ],
      result: given('n', 'courses', courses),
      source: 'derived',
    },
  ]);
}

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
