import { makeReader, type Reader } from '../input/reader.js';
import { fromNumber, type LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Angle, type Length } from '../units/quantity.js';
import { multiplyRatios, wholeRatio } from '../units/ratio.js';
import { roundQuotient } from '../units/round-ratio.js';
import {
  between,
  isZero,
  norm,
  opposite,
  pointFrom,
  share,
  type PlanPoint,
  type Vector,
} from '../units/vector.js';
import { given, withWorking, type Worked } from '../working.js';
import { SITE_LENGTH, UNCERTAINTY } from './limits.js';
import { readPlace } from './read-stakes.js';

/** A straight that a right angle is set out from. */
export interface BaseLineInput {
  /** Where the right angle stands. */
  readonly corner: { readonly x: LengthInput; readonly y: LengthInput };
  /** Any other point of the straight. */
  readonly along: { readonly x: LengthInput; readonly y: LengthInput };
  /** On which side the square leg goes off, seen from the corner along the straight. */
  readonly side: 'left' | 'right';
}

/** A right angle by three lengths of 3, 4 and 5 parts. */
export interface ThreeFourFive extends Worked {
  /** One part. */
  readonly part: Length;
  /** Square to the straight: 3 parts. */
  readonly three: Length;
  /** Along the straight: 4 parts. */
  readonly four: Length;
  /** From the end of the one to the end of the other: 5 parts. */
  readonly five: Length;
  /** Where the marks stand: the end of 4 parts and the end of 3; null without a straight. */
  readonly marks: { readonly four: PlanPoint; readonly three: PlanPoint } | null;
  /** Standard uncertainty of the angle; null where that of the tape is not given. */
  readonly angleUncertainty: Angle | null;
  readonly note: string;
}

/**
 * Lays out a right angle by a triangle of 3, 4 and 5 parts, as large as the tape allows: the larger,
 * the squarer. With u the standard uncertainty of each of the three lengths the angle is uncertain by
 * `u sqrt(2) 5 / (12 part)` radians.
 *
 * @param options.longest - the longest length to tape, for the 5 parts [length]
 * @param options.step - one part is a whole number of these [length], such as `1 ft`; default any
 * @param options.baseLine - `corner` and `along` in plan [length] and the `side`, `left` or `right`, to
 *   have the marks in plan too
 * @param options.uncertainty - standard uncertainty of one taped length [length], if known
 * @returns part and the three lengths [length], marks, uncertainty of the angle [angle]
 * @throws `OUT_OF_RANGE`, `NOT_POSITIVE`, `POINTS_COINCIDE` and the reading codes
 * @source squaring-lines
 * @example
 * const corner = threeFourFive({ longest: '28 ft', step: '1 ft', uncertainty: '1/8 in' });
 * [corner.three, corner.four, corner.five].map((one) => one.to('ft').toString()) //=> ['15', '20', '25']
 * corner.angleUncertainty?.to('deg').toFixed(3) //=> '0.070'
 */
export function threeFourFive(options: {
  readonly longest: LengthInput;
  readonly step?: LengthInput;
  readonly baseLine?: BaseLineInput;
  readonly uncertainty?: LengthInput;
}): ThreeFourFive {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const longest = reader.quantity('length', fields['longest'], ['longest'], SITE_LENGTH);
  const optional = (name: string, rule: typeof SITE_LENGTH) =>
    fields[name] === undefined ? undefined : reader.quantity('length', fields[name], [name], rule);
  const step = optional('step', SITE_LENGTH);
  const uncertainty = optional('uncertainty', UNCERTAINTY);
  const line = fields['baseLine'] === undefined ? null : readLine(reader, fields['baseLine']);
  if (step !== undefined && !longest.isZero() && step.times(5).compare(longest) > 0) {
    reader.fail('OUT_OF_RANGE', ['step'], 'five steps are longer than the tape');
  }
  reader.finish();
  const fifth = longest.dividedBy(5);
  const part = step === undefined ? fifth : wholeSteps(fifth, step);
  const spread = uncertainty?.dividedBy(part).toNumber();
  const [three, four, five] = [part.times(3), part.times(4), part.times(5)];
  return withWorking(
    {
      part,
      three,
      four,
      five,
      marks: line && marksOn(line, part),
      angleUncertainty:
        spread === undefined ? null : fromNumber((spread * Math.SQRT2 * 5) / 12, 'rad'),
      note: 'Tape level and straight. Check the other way round: equal diagonals of the whole rectangle.',
    },
    () => [
      {
        title: 'Diagonal of the triangle',
        formula: 'c = sqrt(a^2 + b^2)',
        given: [given('a', '4 parts', four), given('b', '3 parts', three)],
        result: given('c', '5 parts', five),
        source: 'squaring-lines',
      },
    ],
  );
}

/** As many whole steps as the length holds. */
function wholeSteps(length: Length, step: Length): Length {
  const count = roundQuotient(exactOf(length), exactOf(step), 'down');
  return fromSI('length', multiplyRatios(exactOf(step), count));
}

interface BaseLine {
  readonly corner: PlanPoint;
  readonly along: Vector;
  readonly isLeft: boolean;
}

function readLine(reader: Reader, value: unknown): BaseLine {
  const path = ['baseLine'];
  const fields = reader.object(value, path);
  const place = (name: string): PlanPoint =>
    readPlace(reader, reader.object(fields[name], [...path, name]), [...path, name]);
  const [corner, end] = [place('corner'), place('along')];
  const side = reader.choice(fields['side'], [...path, 'side'], ['left', 'right'] as const);
  const along = between(corner, end);
  if (isZero(along)) {
    reader.fail('POINTS_COINCIDE', [...path, 'along'], 'the corner and this are the same point');
  }
  return { corner, along, isLeft: side === 'left' };
}

function marksOn({ corner, along, isLeft }: BaseLine, part: Length) {
  const size = norm(along);
  const left = { x: opposite(along).y, y: along.x };
  const off = isLeft ? left : opposite(left);
  const go = (way: Vector, parts: number): PlanPoint =>
    pointFrom(corner, share(way, multiplyRatios(exactOf(part), wholeRatio(parts)), size));
  return { four: go(along, 4), three: go(off, 3) };
}
