import { fault, type FieldPath } from '../errors.js';
import { makeReader, type QuantityRule, type Reader } from '../input/reader.js';
import { length, type LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Angle, type Length, type Slope } from '../units/quantity.js';
import { angleOfSlope } from '../units/slope-angle.js';
import { divideRatios } from '../units/ratio.js';
import { verdictOf, type Verdict } from '../verdict.js';
import { given, withWorking, type Worked } from '../working.js';
import { rootSumOfSquares } from './root-sum-of-squares.js';
import { ALLOWED, DISTANCE, READING, SIGHT, TOLERANCE } from './limits.js';

/** Readings, or sight lengths, at the two pegs. */
export interface PegPairInput {
  readonly a: LengthInput;
  readonly b: LengthInput;
}

/** The error of a level from four readings. */
export interface TwoPegTest extends Worked {
  /** Height of peg B above peg A: negative where it stands lower. */
  readonly trueDifference: Length;
  /** Error of a reading over the length of its sight: + where readings come out too big. */
  readonly collimation: number;
  /** The same exactly, as the slope of the line of sight: + where it climbs. */
  readonly lineOfSight: Slope;
  /** The same as an angle. */
  readonly angle: Angle;
  /** What the second set-up ought to have read. */
  readonly corrected: { readonly a: Length; readonly b: Length };
  /** The error over the sight of the rule, and the verdict, where a rule was given. */
  readonly rule?: {
    readonly error: Length;
    readonly allowable: Length;
    readonly uncertainty: Length;
    readonly verdict: Verdict;
  };
}

/**
 * Two-peg test: the same two pegs read from midway, where the error of the level falls out, and from
 * one side, where it shows: `c = ((a2 - b2) - (a1 - b1)) / ((d2a - d2b) - (d1a - d1b))`, true
 * difference `a1 - b1 - c (d1a - d1b)`, corrected reading `r - c d`. Exact. Sights of any four lengths
 * will do, as long as the second set-up is not balanced like the first; so reciprocal levels are
 * covered too. Over long sights the curvature of the earth is in c.
 *
 * @param options.midway - readings `a` and `b` of the first set-up [length, 0 to 20 m]
 * @param options.offset - readings `a` and `b` of the second set-up
 * @param options.distances - sight lengths: `offset` `{ a, b }` of the second set-up [length] and
 *   `midway` of the first, `{ a, b }` or one length, default equal; or the `{ a, b }` of the second
 *   set-up alone. Pegs 50 m apart and the level 5 m beyond B: `{ a: '55 m', b: '5 m' }`
 * @param options.rule - `error` [length] that is allowed `over` a sight [length], if there is one; and
 *   `reading`, the uncertainty of one reading [length], default none; four make a root sum of squares
 * @returns true difference of level [length, B above A], collimation [reading error over length of sight,
 *   + too big], line of sight [slope, + climbing], angle, corrected readings [length], verdict
 * @throws `SIGHTS_EQUAL`, `NEGATIVE`, `OUT_OF_RANGE` and the reading codes
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
export function twoPegTest(options: {
  readonly midway: PegPairInput;
  readonly offset: PegPairInput;
  readonly distances:
    { readonly offset: PegPairInput; readonly midway?: PegPairInput | LengthInput } | PegPairInput;
  readonly rule?: {
    readonly error: LengthInput;
    readonly over: LengthInput;
    readonly reading?: LengthInput;
  };
}): TwoPegTest {
  const { midway, offset, near, far, rule, reading } = readOptions(options);
  const lean = far.a.minus(far.b).minus(near.a.minus(near.b));
  const shift = offset.a.minus(offset.b).minus(midway.a.minus(midway.b));
  const lineOfSight = fromSI('slope', divideRatios(exactOf(shift), exactOf(lean)));
  const corrected = {
    a: offset.a.minus(far.a.times(lineOfSight)),
    b: offset.b.minus(far.b.times(lineOfSight)),
  };
  const trueDifference = corrected.a.minus(corrected.b);
  const judged = rule === undefined ? {} : { rule: judge(lineOfSight, rule, { lean, reading }) };
  const result = {
    trueDifference,
    collimation: lineOfSight.toNumber('ratio'),
    lineOfSight,
    angle: angleOfSlope(lineOfSight),
    corrected,
    ...judged,
  };
  return withWorking(result, () => [
    {
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
      result: given('c', 'collimation (+ readings too big)', lineOfSight),
      source: 'two-peg-test',
    },
    {
      title: 'Reading that peg A ought to have shown',
      formula: 'a = a2 - c d2a',
      given: [
        given('a2', 'second set-up, peg A', offset.a),
        given('c', 'collimation', lineOfSight),
        given('d2a', 'second sight to A', far.a),
      ],
      result: given('a', 'corrected reading', corrected.a),
      source: 'two-peg-test',
    },
  ]);
}

interface Pair {
  readonly a: Length;
  readonly b: Length;
}

const NOTHING = length(0, 'm');

function readOptions(options: unknown) {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const midway = readPair(reader, fields['midway'], { path: ['midway'], rule: READING });
  const offset = readPair(reader, fields['offset'], { path: ['offset'], rule: READING });
  const { near, far } = readSights(reader, fields['distances']);
  const rule = fields['rule'] === undefined ? undefined : readRule(reader, fields['rule']);
  reader.finish();
  if (far.a.minus(far.b).equals(near.a.minus(near.b))) {
    const why = 'both set-ups are balanced alike: read the pegs again from beside or beyond one';
    throw fault('SIGHTS_EQUAL', why, {}, ['distances']);
  }
  return { midway, offset, near, far, rule, reading: rule?.reading ?? NOTHING };
}

interface PairPlace {
  readonly path: FieldPath;
  readonly rule: QuantityRule<'length'>;
}

function readPair(reader: Reader, value: unknown, { path, rule }: PairPlace): Pair {
  const both = reader.object(value, path);
  return {
    a: reader.quantity('length', both['a'], [...path, 'a'], rule),
    b: reader.quantity('length', both['b'], [...path, 'b'], rule),
  };
}

function readSights(reader: Reader, value: unknown): { readonly near: Pair; readonly far: Pair } {
  const sights = reader.object(value, ['distances']);
  const isOffsetAlone = sights['offset'] === undefined && ('a' in sights || 'b' in sights);
  const far = isOffsetAlone
    ? readPair(reader, sights, { path: ['distances'], rule: SIGHT })
    : readPair(reader, sights['offset'], { path: ['distances', 'offset'], rule: SIGHT });
  const path = ['distances', 'midway'];
  const midway = sights['midway'] ?? NOTHING;
  const isPair = typeof midway === 'object' && midway !== null && 'a' in midway;
  if (isPair) return { near: readPair(reader, midway, { path, rule: SIGHT }), far };
  const both = reader.quantity('length', midway, path, SIGHT);
  return { near: { a: both, b: both }, far };
}

function readRule(reader: Reader, value: unknown) {
  const fields = reader.object(value, ['rule']);
  const doubt = fields['reading'] ?? NOTHING;
  return {
    error: reader.quantity('length', fields['error'], ['rule', 'error'], ALLOWED),
    over: reader.quantity('length', fields['over'], ['rule', 'over'], DISTANCE),
    reading: reader.quantity('length', doubt, ['rule', 'reading'], TOLERANCE),
  };
}

function judge(
  lineOfSight: Slope,
  rule: { readonly error: Length; readonly over: Length },
  { lean, reading }: { readonly lean: Length; readonly reading: Length },
) {
  const error = rule.over.times(lineOfSight);
  const ofFour = rootSumOfSquares([reading, reading, reading, reading]);
  const doubt = divideRatios(exactOf(ofFour), exactOf(lean.abs()));
  const uncertainty = rule.over.times(fromSI('slope', doubt));
  const verdict = verdictOf(rule.error.minus(error.abs()), uncertainty);
  return { error, allowable: rule.error, uncertainty, verdict };
}
