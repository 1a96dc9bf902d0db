import { fault } from '../errors.js';
import { choice } from '../input/field.js';
import { likeWritten } from '../input/like-written.js';
import { asWritten } from '../input/read-amount.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { CURVE_PRACTICE } from '../sources/curve-stakes.js';
import { angle } from '../units/construct.js';
import { Decimal40 } from '../units/decimal.js';
import { fromSI, fromSIDecimal, exactOf, type Angle, type Length } from '../units/quantity.js';
import {
  addRatios,
  divideRatios,
  multiplyRatios,
  negateRatio,
  ratioToNumber,
  signOfRatio,
  subtractRatios,
  type Ratio,
} from '../units/ratio.js';
import { squareRoot } from '../units/root.js';
import {
  between,
  plus,
  pointFrom,
  scaled,
  squared,
  turnedLeft,
  type PlanPoint,
  type Vector,
} from '../units/vector.js';
import { derivedStep, given, type Step, withWorking, type Worked } from '../working.js';
import { ellipseOf, type ErrorEllipse } from './error-ellipse.js';
import { twoTapes, type Tape, type TapeInput } from './tapes.js';

/** Two tapes that fix a point. */
export interface PointByTapesOptions {
  /** Two fixed points, each with the length taped from it. */
  readonly from: readonly [TapeInput, TapeInput];
  /** Side of the point, facing from the first fixed point to the second. */
  readonly side: 'left' | 'right';
}

const OPTIONS = shapeOf<PointByTapesOptions>()({
  from: twoTapes,
  side: choice(['left', 'right']),
});

/** A point found by two tapes. */
export interface PointByTapes extends Worked {
  /** The point in plan. */
  readonly point: PlanPoint;
  /** Distance along the line from the first fixed point to the second [length]. */
  readonly along: Length;
  /** Offset from that line [length], + left. */
  readonly offset: Length;
  /** Angle between the two tapes at the point [angle]. 90 degrees is best. */
  readonly crossingAngle: Angle;
  /** True if the tapes cross so flat that a small error of a tape moves the point by far more. */
  readonly isWeakFix: boolean;
  /** Uncertainty of the point; null without uncertainties, or if the tapes only just meet. */
  readonly ellipse: ErrorEllipse | null;
  /** What to do, in words. */
  readonly note: string;
}

/**
 * Finds a point from the lengths taped to it from two fixed points, such as two corners of a house:
 * `t = (a^2 - b^2 + c^2) / (2 c)` along the line from the first to the second, and
 * `h = sqrt(a^2 - t^2)` off it. Exact but for one root. Two points fit the same lengths, one on
 * each side, so you must give the side.
 *
 * The error ellipse is that of small errors, in floats: with equal uncertainties u its axes are
 * `u / sqrt(1 + |cos A|)` and `u / sqrt(1 - |cos A|)`, A the angle at which the tapes cross.
 *
 * @param options - see {@link PointByTapesOptions}
 * @returns the point, along and offset [length, + left], crossing angle, error ellipse; `isWeakFix` for
 *   tapes that cross at less than 30 or more than 150 degrees (common practice, no source)
 * @throws `TRIANGLE_IMPOSSIBLE` for tapes that do not meet, `POINTS_COINCIDE`, `TOO_FEW`, `TOO_MANY`,
 *   `NOT_POSITIVE` and the reading codes
 * @source derived
 * @example
 * const tree = pointByTapes({
 *   from: [
 *     { x: '0 m', y: '0 m', distance: '7.2 m', uncertainty: '3 mm' },
 *     { x: '10 m', y: '0 m', distance: '6.1 m', uncertainty: '3 mm' },
 *   ],
 *   side: 'left',
 * });
 * tree.point.x.to('m').toFixed(4) //=> '5.7315'
 * tree.point.y.to('m').toFixed(4) //=> '4.3577'
 * tree.ellipse?.position.to('mm').toFixed(2) //=> '4.28'
 */
export function pointByTapes(options: PointByTapesOptions): PointByTapes {
  const { from: tapes, side } = readOptions(options, OPTIONS);
  const found = intersect(tapes, side === 'left', options.from);
  const [first, second] = tapes;
  const crossing = crossingOf(tapes, found.between);
  const isWeakFix = [crossing, angle(180, 'deg').minus(crossing)].some(
    (one) => one.compare(WEAK_CROSSING) < 0,
  );
  return withWorking(
    {
      point: pointFrom({ x: first.x, y: first.y }, found.place),
      along: found.along,
      offset: found.offset,
      crossingAngle: crossing,
      isWeakFix,
      ellipse: ellipseAt(tapes, found),
      note: isWeakFix ? NOTES.weak : NOTES.good,
    },
    () => showWorking([first.distance, second.distance], found, crossing),
  );
}

const WEAK_CROSSING = angle(CURVE_PRACTICE.weakCrossing.value, 'deg');

const NOTES = {
  weak: 'The tapes cross too flat for a good fix. Tape from another fixed point.',
  good: 'Check with a length from a third fixed point: two tapes cannot show an error.',
} as const;

interface Intersection {
  /** From the first fixed point to the second. */
  readonly between: Vector;
  /** From the first fixed point to the point. */
  readonly place: Vector;
  readonly apart: Length;
  readonly along: Length;
  readonly offset: Length;
}

function intersect(
  [first, second]: readonly [Tape, Tape],
  isLeft: boolean,
  written: readonly [TapeInput, TapeInput],
): Intersection {
  const line = between(first, second);
  const [a, b] = [exactOf(first.distance), exactOf(second.distance)];
  const square = squared(line);
  // along and off the line from the first fixed point to the second, as fractions of its length
  const twice = addRatios(square, square);
  const gain = addRatios(subtractRatios(multiplyRatios(a, a), multiplyRatios(b, b)), square);
  const along = divideRatios(gain, twice);
  const left = subtractRatios(
    divideRatios(multiplyRatios(a, a), square),
    multiplyRatios(along, along),
  );
  const apart = squareRoot(square);
  if (signOfRatio(left) < 0) {
    throw noMeeting([first.distance, second.distance], fromSI('length', apart), written);
  }
  const off = isLeft ? squareRoot(left) : negateRatio(squareRoot(left));
  const turned = turnedLeft(line);
  const measure = (part: Ratio): Length => fromSI('length', multiplyRatios(part, apart));
  return {
    between: line,
    place: plus(scaled(line, along), scaled(turned, off)),
    apart: fromSI('length', apart),
    along: measure(along),
    offset: measure(off),
  };
}

/** Tapes that do not meet: both too short, or one too long for the other. */
function noMeeting(
  [a, b]: readonly [Length, Length],
  apart: Length,
  [first, second]: readonly [TapeInput, TapeInput],
) {
  const [one, other] = [asWritten(first.distance, a), asWritten(second.distance, b)];
  const text = (worked: Length) => likeWritten(worked, first.distance);
  const isShort = a.plus(b).compare(apart) < 0;
  const gap = isShort ? apart.minus(a.plus(b)) : a.minus(b).abs().minus(apart);
  const why = isShort
    ? `the tapes are ${text(gap)} short of meeting: ${one} and ${other}, with the fixed points ${text(apart)} apart`
    : `the longer tape is ${text(gap)} too long to meet the other: ${one} and ${other}, with the fixed points ${text(apart)} apart`;
  return fault('TRIANGLE_IMPOSSIBLE', `${why}. Tape them again`, { gap: text(gap) }, ['from']);
}

/** `cos A = (a^2 + b^2 - c^2) / (2 a b)` */
function crossingOf([first, second]: readonly [Tape, Tape], line: Vector): Angle {
  const [a, b] = [first.distance, second.distance];
  const apart = fromSI('area', squared(line));
  const cosine = a.times(a).plus(b.times(b)).minus(apart).dividedBy(a.times(b).times(2));
  return fromSIDecimal('angle', Decimal40.acos(cosine));
}

function ellipseAt([first, second]: readonly [Tape, Tape], found: Intersection) {
  if (first.uncertainty === undefined || second.uncertainty === undefined) return null;
  if (found.offset.isZero()) return null;
  const toPoint = (v: Vector): readonly [number, number] => [
    ratioToNumber(v.x),
    ratioToNumber(v.y),
  ];
  const [px, py] = toPoint(found.place);
  const [bx, by] = toPoint(found.between);
  return ellipseOf([
    { along: [px, py], uncertainty: first.uncertainty.toNumber('m') },
    { along: [px - bx, py - by], uncertainty: second.uncertainty.toNumber('m') },
  ]);
}

function showWorking(
  [a, b]: readonly [Length, Length],
  { apart, along, offset }: Intersection,
  crossing: Angle,
): Step[] {
  const first = given('a', 'from the first point', a);
  const all = [
    first,
    given('b', 'from the second', b),
    given('c', 'from fixed point to fixed point', apart),
  ];
  const t = given('t', 'along', along);
  return [
    derivedStep({
      title: 'Along the line',
      formula: 't = (a^2 - b^2 + c^2) / (2 * c)',
      given: all,
      result: t,
    }),
    derivedStep({
      title: 'Off the line (+ left)',
      formula: offset.isNegative() ? 'h = -sqrt(a^2 - t^2)' : 'h = sqrt(a^2 - t^2)',
      given: [first, t],
      result: given('h', 'offset', offset),
    }),
    derivedStep({
      title: 'Angle between the tapes',
      formula: 'A = acos((a^2 + b^2 - c^2) / (2 * a * b))',
      given: all,
      result: given('A', 'crossing angle', crossing),
    }),
  ];
}
