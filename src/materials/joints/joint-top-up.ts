import { optional, quantity } from '../../input/field.js';
import { SMALL, TOLERANCE } from '../../input/ranges.js';
import { readOptions, shapeOf } from '../../input/shape.js';
import { PAVER_TOLERANCES } from '../../sources/surface-tolerances.js';
import { length, type LengthInput } from '../../units/construct.js';
import { NO_LENGTH } from '../../units/zero.js';
import { type Verdict, verdictOf } from '../../verdict.js';
import { formulaStep, given, published, withWorking, type Worked } from '../../working.js';
import {
  fillJoints,
  JOINTS,
  jointSteps,
  type FilledJoints,
  type JointsInput,
} from './fill-joints.js';

const LIMIT = length(PAVER_TOLERANCES.jointFillBelowTop.value, 'in');

/** Joints that have lost sand. */
export interface JointTopUpOptions extends JointsInput {
  /** Average depth from the top of the paver down to the fill [length], 0 to 1 m. */
  readonly depthLost: LengthInput;
  /** Maximum depth to the fill [length], 0 to 1 m. Default: 1/2 in, as published. */
  readonly limit?: LengthInput;
  /** Uncertainty of the average, either way [length], 0 to 10 m. Default: 0. */
  readonly uncertainty?: LengthInput;
}

const OPTIONS = shapeOf<JointTopUpOptions>()({
  ...JOINTS,
  depthLost: quantity(SMALL),
  limit: optional(quantity(SMALL), LIMIT),
  uncertainty: optional(quantity(TOLERANCE), NO_LENGTH),
});

/** Sand to top up joints. */
export interface JointTopUp extends FilledJoints, Worked {
  /** Verdict on the depth of the fill; `fail` means topping up is due. */
  readonly verdict: Verdict;
  /** What it means, and what to do. */
  readonly note: string;
}

/**
 * Sand to top up joints that have lost some: `V = A x share x average depth lost`. Topping up is
 * due if the fill is deeper below the top than the limit; on the limit it is not due yet.
 *
 * @param options - see {@link JointTopUpOptions}
 * @returns as `jointSand`, and whether topping up is due
 * @throws `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`, `CAPACITY_EXCEEDED` and the reading codes
 * @source paver-tolerances
 * @example
 * const again = jointTopUp({
 *   area: '60 m2',
 *   unit: { length: '200 mm', width: '100 mm' },
 *   joint: '3 mm',
 *   depthLost: '15 mm',
 *   density: '1600 kg/m3',
 * });
 * again.verdict //=> 'fail'
 * again.mass.to('kg').toFixed(1) //=> '62.6'
 */
export function jointTopUp(options: JointTopUpOptions): JointTopUp {
  const read = readOptions(options, OPTIONS);
  const { depthLost, limit } = read;
  const filled = fillJoints(read, depthLost);
  const isPublished = limit.equals(LIMIT);
  const verdict = verdictOf(limit.minus(depthLost), read.uncertainty);
  return withWorking({ ...filled, verdict, note: NOTES[verdict] }, () => [
    ...jointSteps(read, filled),
    formulaStep({
      title: 'Fill below the top',
      formula: 'v = h0 - h >= u ? "pass" : (h0 - h < -u ? "fail" : "unclear")',
      given: [
        given('h', 'depth to the fill', depthLost),
        isPublished
          ? published('h0', 'maximum depth', limit, 'paver-tolerances')
          : given('h0', 'maximum depth', limit),
        given('u', 'uncertainty', read.uncertainty),
      ],
      result: given('v', 'verdict', verdict),
      source: isPublished ? 'paver-tolerances' : 'derived',
    }),
  ]);
}

const NOTES: Readonly<Record<Verdict, string>> = {
  pass: 'The joints are full enough.',
  unclear: 'Too close to the limit to tell. Take more readings, then check again.',
  fail: 'Top up the joints. If sand is lost in lines or gullies, water washed it out. Find the drainage fault first.',
};
