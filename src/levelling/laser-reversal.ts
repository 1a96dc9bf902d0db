import { makeReader, type Reader } from '../input/reader.js';
import { cautionsFor, type Caution } from '../sources/cautions.js';
import { length, type LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Angle, type Length } from '../units/quantity.js';
import { divideRatios } from '../units/ratio.js';
import { angleOfSlope } from '../units/slope-angle.js';
import { verdictOf, worstVerdict, type Verdict } from '../verdict.js';
import { given, withWorking, type Step, type Worked } from '../working.js';
import { rootSumOfSquares } from './root-sum-of-squares.js';
import { readAccuracy, type AccuracyInput } from './accuracy.js';
import { DISTANCE, ELEVATION, TOLERANCE } from './limits.js';

/** The two marks of one axis, before and after a half turn, as heights or as rod readings. */
export interface ReversalMarksInput {
  readonly first: LengthInput;
  readonly second: LengthInput;
}

/** The error of one axis. */
export interface AxisError {
  /** First mark less second. */
  readonly difference: Length;
  /** Half of it: how far the beam is off level over the distance, + where the first mark is high. */
  readonly error: Length;
  readonly angle: Angle;
  readonly verdict: Verdict;
}

/** A rotating laser tested by half turns. */
export interface LaserReversal extends Worked {
  readonly x: AxisError;
  readonly y?: AxisError;
  /** The most that two marks may differ by. */
  readonly mostDifference: Length;
  readonly verdict: Verdict;
  readonly cautions: readonly Caution[];
}

/**
 * 180-degree test of a rotating laser: the beam is marked on one target, the instrument turned by half
 * a turn and the beam marked again. `error = (first - second) / 2` over the distance, the marks may
 * differ by `2 D accuracy`. Test both axes, at a good distance; that the beam is level says nothing
 * about a grade that is dialled in.
 *
 * @param options.distance - from instrument to target [length]
 * @param options.x - marks `first` and `second` of one axis [length], as heights
 * @param options.y - marks of the other axis, likewise
 * @param options.accuracy - what the instrument promises: `error` [length] `over` a distance [length],
 *   or the `angle` of the beam to the level [angle]
 * @param options.uncertainty - of one mark [length], default none; two make a root sum of squares
 * @returns difference and error [length], angle and verdict for each axis, the most that marks may
 *   differ by [length], cautions
 * @throws `NOT_POSITIVE`, `ONE_OF`, `REQUIRED`, `OUT_OF_RANGE` and the reading codes
 * @source laser-reversal
 * @example
 * const test = laserReversal({
 *   distance: '30 m',
 *   x: { first: '1.503 m', second: '1.497 m' },
 *   accuracy: { error: '0.05 mm', over: '1 m' },
 * });
 * test.mostDifference.to('mm').toString() //=> '3'
 * test.x.error.to('mm').toString() //=> '3'
 * test.verdict //=> 'fail'
 */
export function laserReversal(options: {
  readonly distance: LengthInput;
  readonly x: ReversalMarksInput;
  readonly y?: ReversalMarksInput;
  readonly accuracy: AccuracyInput;
  readonly uncertainty?: LengthInput;
}): LaserReversal {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const distance = reader.quantity('length', fields['distance'], ['distance'], DISTANCE);
  const x = readMarks(reader, fields['x'], 'x');
  const y = fields['y'] === undefined ? undefined : readMarks(reader, fields['y'], 'y');
  const accuracy = readAccuracy(reader, fields['accuracy']);
  const doubt = fields['uncertainty'] ?? NOTHING;
  const uncertainty = reader.quantity('length', doubt, ['uncertainty'], TOLERANCE);
  reader.finish();
  const mostDifference = distance.times(2).times(accuracy);
  const judge = (marks: Marks) => axisError(marks, { distance, mostDifference, uncertainty });
  const axes = { x: judge(x), ...(y === undefined ? {} : { y: judge(y) }) };
  const verdict = worstVerdict(Object.values(axes).map((axis) => axis.verdict));
  const cautions = cautionsFor('laser');
  return withWorking({ ...axes, mostDifference, verdict, cautions }, () => [
    {
      title: 'Most that two marks may differ by',
      formula: 'd = 2 D a',
      given: [given('D', 'distance', distance), given('a', 'error over distance', accuracy)],
      result: given('d', 'difference', mostDifference),
      source: 'laser-reversal',
    },
    axisStep('x', x, axes.x),
    ...(y === undefined || axes.y === undefined ? [] : [axisStep('y', y, axes.y)]),
  ]);
}

interface Marks {
  readonly first: Length;
  readonly second: Length;
}

const NOTHING = length(0, 'm');

function readMarks(reader: Reader, value: unknown, name: 'x' | 'y'): Marks {
  const fields = reader.object(value, [name]);
  return {
    first: reader.quantity('length', fields['first'], [name, 'first'], ELEVATION),
    second: reader.quantity('length', fields['second'], [name, 'second'], ELEVATION),
  };
}

interface Basis {
  readonly distance: Length;
  readonly mostDifference: Length;
  readonly uncertainty: Length;
}

function axisError({ first, second }: Marks, basis: Basis): AxisError {
  const difference = first.minus(second);
  const error = difference.dividedBy(2);
  const tilt = fromSI('slope', divideRatios(exactOf(error), exactOf(basis.distance)));
  const margin = basis.mostDifference.minus(difference.abs());
  const ofTwo = rootSumOfSquares([basis.uncertainty, basis.uncertainty]);
  const verdict = verdictOf(margin, ofTwo);
  return { difference, error, angle: angleOfSlope(tilt), verdict };
}

const axisStep = (name: 'x' | 'y', { first, second }: Marks, { error }: AxisError): Step => ({
  title: `Error of the ${name} axis`,
  formula: 'e = (m1 - m2) / 2',
  given: [given('m1', 'first mark', first), given('m2', 'second mark', second)],
  result: given('e', 'error over the distance', error),
  source: 'laser-reversal',
});
