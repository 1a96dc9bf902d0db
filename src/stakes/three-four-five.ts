import { choice, object, optional, quantity } from '../input/field.js';
import { SITE_LENGTH, TOLERANCE } from '../input/ranges.js';
import { asWritten } from '../input/read-amount.js';
import { readOptions, shapeOf, type Check, type Values } from '../input/shape.js';
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
import { formulaStep, given, withWorking, type Worked } from '../working.js';
import { PLAN_PLACE, type PlanPlaceInput } from './plan-stake.js';

/** A base line for a right angle. */
export interface BaseLineInput {
  /** Point of the right angle. */
  readonly corner: PlanPlaceInput;
  /** Any other point of the base line. */
  readonly along: PlanPlaceInput;
  /** Side of the square leg, facing along the base line from the corner. */
  readonly side: 'left' | 'right';
}

/** A right angle to lay out. */
export interface ThreeFourFiveOptions {
  /** Maximum length to tape, for the 5 parts [length], more than 0 and at most 10 km. */
  readonly longest: LengthInput;
  /**
   * Round one part down to a multiple of this [length], such as `1 ft`, at most a fifth of
   * `longest`. Default: not rounded.
   */
  readonly step?: LengthInput;
  /** The base line, to get the marks in plan too. Default: none. */
  readonly baseLine?: BaseLineInput;
  /** Standard uncertainty of one taped length [length], 0 to 10 m. Default: not known. */
  readonly uncertainty?: LengthInput;
}

const BASE_LINE = shapeOf<BaseLineInput>()({
  corner: object(PLAN_PLACE),
  along: object(PLAN_PLACE),
  side: choice(['left', 'right']),
});

const checkBaseLine: Check<typeof BASE_LINE> = (reader, { corner, along }, path) => {
  if (corner === undefined || along === undefined || !isZero(between(corner, along))) return;
  const message = 'this is the corner itself. Give another point of the base line';
  reader.fail('POINTS_COINCIDE', [...path, 'along'], message);
};

const OPTIONS = shapeOf<ThreeFourFiveOptions>()({
  longest: quantity(SITE_LENGTH),
  step: optional(quantity(SITE_LENGTH)),
  baseLine: optional(object(BASE_LINE, checkBaseLine)),
  uncertainty: optional(quantity(TOLERANCE)),
});

/** Marks of a right angle in plan. */
export interface RightAngleMarks {
  /** End of the 4 parts, along the base line. */
  readonly four: PlanPoint;
  /** End of the 3 parts, square to the base line. */
  readonly three: PlanPoint;
}

/** A right angle by three lengths of 3, 4 and 5 parts. */
export interface ThreeFourFive extends Worked {
  /** One part [length]. */
  readonly part: Length;
  /** 3 parts, square to the base line [length]. */
  readonly three: Length;
  /** 4 parts, along the base line [length]. */
  readonly four: Length;
  /** 5 parts, the diagonal from end to end [length]. */
  readonly five: Length;
  /** The marks in plan; null without a base line. */
  readonly marks: RightAngleMarks | null;
  /** Standard uncertainty of the right angle [angle]; null if you gave none for the tape. */
  readonly angleUncertainty: Angle | null;
  /** How to tape and check it. */
  readonly note: string;
}

/**
 * Lays out a right angle by a triangle of 3, 4 and 5 parts, as large as the tape allows. The larger
 * the triangle, the squarer the corner. With u the standard uncertainty of each of the three
 * lengths, the angle is uncertain by `u sqrt(2) 5 / (12 part)` radians.
 *
 * @param options - see {@link ThreeFourFiveOptions}
 * @returns part and the three lengths [length], marks, uncertainty of the angle [angle]
 * @throws `OUT_OF_RANGE`, `NOT_POSITIVE`, `POINTS_COINCIDE` and the reading codes
 * @source squaring-lines
 * @example
 * const corner = threeFourFive({ longest: '28 ft', step: '1 ft', uncertainty: '1/8 in' });
 * [corner.three, corner.four, corner.five].map((one) => one.to('ft').toString()) //=> ['15', '20', '25']
 * corner.angleUncertainty?.to('deg').toFixed(3) //=> '0.070'
 */
export function threeFourFive(options: ThreeFourFiveOptions): ThreeFourFive {
  const { longest, step, baseLine, uncertainty } = readOptions(options, OPTIONS, checkStep);
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
      marks: baseLine === undefined ? null : marksOn(baseLine, part),
      angleUncertainty:
        spread === undefined ? null : fromNumber((spread * Math.SQRT2 * 5) / 12, 'rad'),
      note: 'Tape level and straight. Then check the whole rectangle: its diagonals must be equal.',
    },
    () => [
      formulaStep({
        title: 'Diagonal of the triangle',
        formula: 'c = sqrt(a^2 + b^2)',
        given: [given('a', '4 parts', four), given('b', '3 parts', three)],
        result: given('c', '5 parts', five),
        source: 'squaring-lines',
      }),
    ],
  );
}

const checkStep: Check<typeof OPTIONS> = (reader, { longest, step }, path, raw) => {
  if (longest === undefined || step === undefined || step.times(5).compare(longest) <= 0) return;
  const [part, most] = [asWritten(raw['step'], step), asWritten(raw['longest'], longest)];
  const message = `five steps of ${part} are longer than ${most}. Write a shorter step`;
  reader.fail('OUT_OF_RANGE', [...path, 'step'], message);
};

/** As many whole steps as the length holds. */
function wholeSteps(length: Length, step: Length): Length {
  const count = roundQuotient(exactOf(length), exactOf(step), 'down');
  return fromSI('length', multiplyRatios(exactOf(step), count));
}

function marksOn(
  { corner, along: end, side }: Values<typeof BASE_LINE>,
  part: Length,
): RightAngleMarks {
  const along = between(corner, end);
  const size = norm(along);
  const left = { x: opposite(along).y, y: along.x };
  const off = side === 'left' ? left : opposite(left);
  const go = (way: Vector, parts: number): PlanPoint =>
    pointFrom(corner, share(way, multiplyRatios(exactOf(part), wholeRatio(parts)), size));
  return { four: go(along, 4), three: go(off, 3) };
}
