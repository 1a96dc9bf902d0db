import { makeReader, type Reader } from '../input/reader.js';
import { CURVE_PRACTICE } from '../sources/curve-stakes.js';
import { angle } from '../units/construct.js';
import { Decimal40 } from '../units/decimal.js';
import { formatQuantity } from '../units/format-quantity.js';
import { exactOf, fromSI, fromSIDecimal, type Angle, type Length } from '../units/quantity.js';
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
  isZero,
  plus,
  pointFrom,
  scaled,
  squared,
  type PlanPoint,
  type Vector,
} from '../units/vector.js';
import { given, withWorking, type Step, type Worked } from '../working.js';
import { ellipseOf, type ErrorEllipse } from './error-ellipse.js';
import { readTapes, type Tape, type TapeInput } from './read-tapes.js';

/** A point found by two tapes. */
export interface PointByTapes extends Worked {
  readonly point: PlanPoint;
  /** Along the line from the first fixed point to the second, and off it, + left. */
  readonly along: Length;
  readonly offset: Length;
  /** Between the two tapes at the point: best at 90 degrees. */
  readonly crossingAngle: Angle;
  /** True where the tapes cross so flat that a slip of the tape moves the point by far more. */
  readonly weak: boolean;
  /** Where the point may really be; null without uncertainties, or where the tapes only touch. */
  readonly ellipse: ErrorEllipse | null;
  readonly note: string;
}

/**
 * Finds a point from the lengths taped to it from two fixed points, such as two corners of a house:
 * `t = (a^2 - b^2 + c^2) / (2 c)` along the line from the first to the second, and
 * `h = sqrt(a^2 - t^2)` off it. Exact but for one root. Two points answer to the same lengths, one on
 * either side, so the side must be said.
 *
 * The error ellipse is that of small errors, in floats: with equal uncertainties u its axes are
 * `u / sqrt(1 + |cos A|)` and `u / sqrt(1 - |cos A|)`, A the angle at which the tapes cross.
 *
 * @param options.from - two fixed points: `x` and `y` [length], `distance` [length] taped level from
 *   each, and its standard `uncertainty` [length], if known
 * @param options.side - `left` or `right` of the line from the first fixed point to the second
 * @returns the point, along and offset [length, + left], crossing angle, error ellipse; `weak` for
 *   tapes that cross at less than 30 or more than 150 degrees (common practice, no source)
 * @throws `DISTANCES_DO_NOT_MEET`, `POINTS_COINCIDE`, `NOT_POSITIVE` and the reading codes
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
export function pointByTapes(options: {
  readonly from: readonly [TapeInput, TapeInput];
  readonly side: 'left' | 'right';
}): PointByTapes {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const tapes = readTapes(reader, fields['from']);
  const side = reader.choice(fields['side'], ['side'], ['left', 'right'] as const);
  reader.finish();
  const found = intersect(reader, tapes, side === 'left');
  const [first, second] = tapes;
  const point = pointFrom(first.at, found.place);
  const crossing = crossingOf(tapes, found.between);
  const weak = [crossing, angle(180, 'deg').minus(crossing)].some(
    (one) => one.compare(WEAK_CROSSING) < 0,
  );
  const ellipse = ellipseAt(tapes, found);
  return withWorking(
    {
      point,
      along: found.along,
      offset: found.offset,
      crossingAngle: crossing,
      weak,
      ellipse,
      note: weak ? NOTES.weak : NOTES.good,
    },
    () => showWorking([first.distance, second.distance], found, crossing),
  );
}

const WEAK_CROSSING = angle(CURVE_PRACTICE.weakCrossing.value, 'deg');

const NOTES = {
  weak: 'The tapes cross too flat for a good fix: tape from another fixed point.',
  good: 'Check with a length from a third fixed point: two tapes cannot show a slip.',
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
  reader: Reader,
  [first, second]: readonly [Tape, Tape],
  isLeft: boolean,
): Intersection {
  const line = between(first.at, second.at);
  if (isZero(line)) {
    reader.fail('POINTS_COINCIDE', ['from', 1], 'both fixed points are the same point');
    reader.finish();
  }
  const [a, b] = [exactOf(first.distance), exactOf(second.distance)];
  const square = squared(line);
  // shares of the line from the first fixed point to the second: along it and off it
  const twice = addRatios(square, square);
  const gain = addRatios(subtractRatios(multiplyRatios(a, a), multiplyRatios(b, b)), square);
  const along = divideRatios(gain, twice);
  const left = subtractRatios(
    divideRatios(multiplyRatios(a, a), square),
    multiplyRatios(along, along),
  );
  const apart = squareRoot(square);
  if (signOfRatio(left) < 0) {
    refuse(reader, [first.distance, second.distance], fromSI('length', apart));
  }
  const off = isLeft ? squareRoot(left) : negateRatio(squareRoot(left));
  const turned = { x: negateRatio(line.y), y: line.x };
  const measure = (part: Ratio): Length => fromSI('length', multiplyRatios(part, apart));
  return {
    between: line,
    place: plus(scaled(line, along), scaled(turned, off)),
    apart: fromSI('length', apart),
    along: measure(along),
    offset: measure(off),
  };
}

function refuse(reader: Reader, [a, b]: readonly [Length, Length], apart: Length): void {
  const text = (one: Length) => formatQuantity(one, { as: 'm', places: 3 });
  const isShort = a.plus(b).compare(apart) < 0;
  const gap = isShort ? apart.minus(a.plus(b)) : a.minus(b).abs().minus(apart);
  const why = isShort ? 'do not reach each other' : 'lie one inside the other';
  const message = `${text(a)} and ${text(b)} from points ${text(apart)} apart ${why}, by ${text(gap)}: measure again`;
  reader.fail('DISTANCES_DO_NOT_MEET', ['from'], message, { gap: gap.toString() });
  reader.finish();
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
  const taped = [given('a', 'from the first point', a), given('b', 'from the second', b)];
  const all = [...taped, given('c', 'from fixed point to fixed point', apart)];
  const step = (title: string, formula: string, result: Step['result']): Step => ({
    title,
    formula,
    given: all,
    result,
    source: 'derived',
  });
  return [
    step('Along the line', 't = (a^2 - b^2 + c^2) / (2 c)', given('t', 'along', along)),
    step('Off the line (+ left)', 'h = sqrt(a^2 - t^2)', given('h', 'offset', offset)),
    step(
      'Angle between the tapes',
      'cos A = (a^2 + b^2 - c^2) / (2 a b)',
      given('A', 'crossing angle', crossing),
    ),
  ];
}
