import { object, optional, quantity } from '../input/field.js';
import { SITE_LENGTH, TOLERANCE, TOLERANCE_OF_SOME } from '../input/ranges.js';
import { readOptions, shapeOf, type Values } from '../input/shape.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Angle, type Length, type Slope } from '../units/quantity.js';
import { divideRatios } from '../units/ratio.js';
import { angleOfSlope } from '../units/slope-angle.js';
import { NO_LENGTH } from '../units/zero.js';
import { verdictOf, type Verdict } from '../verdict.js';
import { formulaStep, given, type Step, withWorking, type Worked } from '../working.js';
import {
  pegReadings,
  pegSights,
  type PegPair,
  type PegPairInput,
  type PegSightsInput,
} from './peg-sights.js';
import { rootSumOfSquares } from './root-sum-of-squares.js';

/** Allowable error of a level. */
export interface PegRuleInput {
  /** Maximum error [length], more than 0 and at most 10 m. */
  readonly error: LengthInput;
  /** Sight over which it is allowed [length], more than 0 and at most 10 km. */
  readonly over: LengthInput;
  /**
   * Uncertainty of one reading [length], 0 to 10 m; the four readings add as root sum of squares.
   * Default: 0.
   */
  readonly reading?: LengthInput;
}

/** Readings of a two-peg test. */
export interface TwoPegTestOptions {
  /** Readings of the first set-up, midway between the pegs. */
  readonly midway: PegPairInput;
  /** Readings of the second set-up, to one side. */
  readonly offset: PegPairInput;
  /**
   * Lengths of the sights of both set-ups, or `{ a, b }` of the second one alone. With pegs 50 m apart
   * and the level 5 m beyond B that is `{ a: '55 m', b: '5 m' }`.
   */
  readonly distances: PegSightsInput | PegPairInput;
  /** The allowable error, to judge the level. Default: not judged. */
  readonly rule?: PegRuleInput;
}

const RULE = shapeOf<PegRuleInput>()({
  error: quantity(TOLERANCE_OF_SOME),
  over: quantity(SITE_LENGTH),
  reading: optional(quantity(TOLERANCE), NO_LENGTH),
});

const OPTIONS = shapeOf<TwoPegTestOptions>()({
  midway: pegReadings,
  offset: pegReadings,
  distances: pegSights,
  rule: optional(object(RULE)),
});

/** A level compared with its allowable error. */
export interface PegVerdict {
  /** Error over the sight of the rule, positive if the line of sight climbs. */
  readonly error: Length;
  /** Maximum error, as given. */
  readonly allowable: Length;
  /** Uncertainty of the error. */
  readonly uncertainty: Length;
  /** Verdict on the level. */
  readonly verdict: Verdict;
}

/** The error of a level from four readings. */
export interface TwoPegTest extends Worked {
  /** Height of peg B above peg A; negative if it is lower. */
  readonly trueDifference: Length;
  /** Reading error over length of sight, positive if readings are too large. */
  readonly collimation: number;
  /** The same exactly, as the slope of the line of sight: positive if it climbs. */
  readonly lineOfSight: Slope;
  /** The same as an angle. */
  readonly angle: Angle;
  /** The readings that the second set-up should have given. */
  readonly corrected: PegPair;
  /** The level compared with the rule; null if no rule is given. */
  readonly rule: PegVerdict | null;
}

/**
 * Two-peg test: read two pegs from midway, where the error of the level cancels, and from one side,
 * where it shows. `c = ((a2 - b2) - (a1 - b1)) / ((d2a - d2b) - (d1a - d1b))`, true difference
 * `a1 - b1 - c (d1a - d1b)`, corrected reading `r - c d`. Exact. The four sights may have any
 * lengths, but the second set-up must not be balanced like the first. This covers reciprocal levels
 * too. Over long sights c includes the curvature of the earth.
 *
 * @param options - see {@link TwoPegTestOptions}
 * @returns true difference of level [length, B above A], collimation [reading error over length of
 *   sight, + too large], line of sight [slope, + climbing], angle, corrected readings [length], verdict
 * @throws `SIGHTS_EQUAL`, `REQUIRED`, `NEGATIVE`, `NOT_POSITIVE`, `OUT_OF_RANGE` and the reading codes
 * @source two-peg-test
 * @example
 * const test = twoPegTest({
 *   midway: { a: '1.283 m', b: '0.860 m' },
 *   offset: { a: '1.612 m', b: '1.219 m' },
 *   distances: { midway: '25 m', offset: { a: '55 m', b: '5 m' } },
 * });
 * test.collimation //=> -0.0006
 * test.corrected.a.to('m').toString() //=> '1.645'
 * test.trueDifference.to('m').toString() //=> '0.423'
 */
export function twoPegTest(options: TwoPegTestOptions): TwoPegTest {
  const read = readOptions(options, OPTIONS, (reader, { distances }, path) => {
    if (distances === undefined || !leanOf(distances).isZero()) return;
    const why =
      'both set-ups are balanced the same way, so the error does not show. Read the pegs again from beyond one of them';
    reader.fail('SIGHTS_EQUAL', [...path, 'distances'], why);
  });
  const { midway, offset, distances, rule } = read;
  const lean = leanOf(distances);
  const shift = differenceOf(offset).minus(differenceOf(midway));
  const lineOfSight = fromSI('slope', divideRatios(exactOf(shift), exactOf(lean)));
  const corrected = {
    a: offset.a.minus(distances.offset.a.times(lineOfSight)),
    b: offset.b.minus(distances.offset.b.times(lineOfSight)),
  };
  const result = {
    trueDifference: differenceOf(corrected),
    collimation: lineOfSight.toNumber('ratio'),
    lineOfSight,
    angle: angleOfSlope(lineOfSight),
    corrected,
    rule: rule === undefined ? null : judge(lineOfSight, rule, lean),
  };
  return withWorking(result, () => testSteps(read, result));
}

const differenceOf = ({ a, b }: PegPair): Length => a.minus(b);

/** Difference of sights (A less B) in the second set-up, less that in the first. */
const leanOf = ({ offset, midway }: Values<typeof OPTIONS>['distances']): Length =>
  differenceOf(offset).minus(differenceOf(midway));

function judge(
  lineOfSight: Slope,
  { error: allowable, over, reading }: Values<typeof RULE>,
  lean: Length,
): PegVerdict {
  const error = over.times(lineOfSight);
  const ofFour = rootSumOfSquares([reading, reading, reading, reading]);
  const doubt = divideRatios(exactOf(ofFour), exactOf(lean.abs()));
  const uncertainty = over.times(fromSI('slope', doubt));
  const verdict = verdictOf(allowable.minus(error.abs()), uncertainty);
  return { error, allowable, uncertainty, verdict };
}

function testSteps(
  { midway, offset, distances: { offset: far, midway: near } }: Values<typeof OPTIONS>,
  { lineOfSight, corrected }: Pick<TwoPegTest, 'lineOfSight' | 'corrected'>,
): Step[] {
  return [
    formulaStep({
      title: 'Reading error over length of sight',
      formula: 'c = ((a2 - b2) - (a1 - b1)) / ((d2a - d2b) - (d1a - d1b))',
      given: [
        given('a1', 'midway, peg A', midway.a),
        given('b1', 'midway, peg B', midway.b),
        given('a2', 'second set-up, peg A', offset.a),
        given('b2', 'second set-up, peg B', offset.b),
        given('d2a', 'second sight to A', far.a),
        given('d2b', 'second sight to B', far.b),
        given('d1a', 'first sight to A', near.a),
        given('d1b', 'first sight to B', near.b),
      ],
      result: given('c', 'collimation (+ readings too large)', lineOfSight),
      source: 'two-peg-test',
    }),
    formulaStep({
      title: 'Correct reading at peg A',
      formula: 'a = a2 - c * d2a',
      given: [
        given('a2', 'second set-up, peg A', offset.a),
        given('c', 'collimation', lineOfSight),
        given('d2a', 'second sight to A', far.a),
      ],
      result: given('a', 'corrected reading', corrected.a),
      source: 'two-peg-test',
    }),
  ];
}
