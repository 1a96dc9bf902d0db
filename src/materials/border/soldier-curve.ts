import { choice, optional, quantity } from '../../input/field.js';
import { JOINT, OPEN_JOINT, RADIUS } from '../../input/ranges.js';
import { readOptions, shapeOf, type Check } from '../../input/shape.js';
import { angle, type LengthInput } from '../../units/construct.js';
import { exactOf, fromSI, type Length } from '../../units/quantity.js';
import { divideRatios, multiplyRatios, subtractRatios, type Ratio } from '../../units/ratio.js';
import { squareRoot } from '../../units/root.js';
import { derivedStep, given, type Step, withWorking, type Worked } from '../../working.js';
import { unit, type UnitInput } from '../pavers/unit.js';
import { wholeDown } from '../whole-number.js';
import { COURSES, courseSize, type Course, type CourseSize } from './course.js';

/** A course of uncut pavers on a curve. */
export interface SoldierCurveOptions {
  /** Size of a paver, without joints. */
  readonly unit: UnitInput;
  /** Direction of the pavers to the edge. Default: `soldier`, the long side square to the edge. */
  readonly course?: Course;
  /** Joint at the inner edge [length], 0 to 100 mm. */
  readonly joint: LengthInput;
  /** Maximum joint at the outer edge [length], more than `joint` and at most 100 mm. */
  readonly maximumJoint: LengthInput;
  /**
   * Radius of the inner edge to check [length], up to 1000 km; the circle must hold at least one
   * paver and its joint. Default: none is checked.
   */
  readonly radius?: LengthInput;
}

const OPTIONS = shapeOf<SoldierCurveOptions>()({
  unit,
  course: optional(choice(COURSES), 'soldier'),
  joint: quantity(JOINT),
  maximumJoint: quantity(OPEN_JOINT),
  radius: optional(quantity(RADIUS)),
});

/** A full circle of pavers. */
export interface CircleOfUnits {
  /** Number of pavers in the circle. */
  readonly units: number;
  /** Inner joint that closes the circle. */
  readonly innerJoint: Length;
}

/** A course at one radius. */
export interface CurveAtRadius {
  /** Joint at the outer edge of the course. */
  readonly outerJoint: Length;
  /** True if the outer joint is within the limit without cutting. */
  readonly isWithinLimit: boolean;
  /** Total width cut from the inner end of each paver to keep its joints parallel. */
  readonly taper: Length;
  /** Gap between the arc and the middle of a paver's straight side. */
  readonly chordGap: Length;
  /** A full circle at this radius. */
  readonly circle: CircleOfUnits;
}

/** The tightest curve for a course of uncut pavers. */
export interface SoldierCurve extends Worked {
  /** Minimum inner radius with the outer joint within its limit. */
  readonly minimumRadius: Length;
  /** The course at the radius given; null if none was. */
  readonly atRadius: CurveAtRadius | null;
}

/**
 * A course of rectangular pavers on a curve: joints open toward the outside. With depth d, size w
 * along the curve and inner joint j: `outer joint = (w + j) (R + d) / R - w`, and
 * `minimum radius = d (w + j) / (maximum joint - j)`. Pavers tapered to even joints lose
 * `(w + j) d / (R + d)` of their inner end. Arc lengths are used for chords, with an error of
 * `w^2 / (8 R)` ({@link CurveAtRadius.chordGap}).
 *
 * @param options - see {@link SoldierCurveOptions}
 * @returns minimum radius; at the radius: outer joint, whether it passes, taper, chord gap, full circle
 * @throws `OUT_OF_RANGE`, `NOT_POSITIVE`, `NEGATIVE`, `UNKNOWN_CHOICE` and the reading codes
 * @source derived
 * @example
 * const curve = soldierCurve({
 *   unit: { length: '200 mm', width: '100 mm' },
 *   joint: '3 mm',
 *   maximumJoint: '5 mm',
 *   radius: '3 m',
 * });
 * curve.minimumRadius.to('m').toString() //=> '10.3'
 * curve.atRadius?.outerJoint.to('mm').toFixed(2) //=> '9.87'
 */
export function soldierCurve(options: SoldierCurveOptions): SoldierCurve {
  const read = readOptions(options, OPTIONS, checkCurve);
  const { joint, maximumJoint: most, radius } = read;
  const size = courseSize(read.course, read.unit);
  const { depth, along } = size;
  const minimumRadius = scaledLength(depth, along.plus(joint), most.minus(joint));
  const atRadius = radius === undefined ? null : lookAt(radius, size, joint, most);
  return withWorking({ minimumRadius, atRadius }, () => [
    derivedStep({
      title: 'Tightest curve for uncut pavers',
      formula: 'R = d * (w + j) / (j1 - j)',
      given: [
        given('d', 'depth of the course', depth),
        given('w', 'size along the curve', along),
        given('j', 'inner joint', joint),
        given('j1', 'maximum outer joint', most),
      ],
      result: given('R', 'minimum inner radius', minimumRadius),
    }),
    ...(radius === undefined || atRadius === null
      ? []
      : [radiusStep({ radius, joint, ...size }, atRadius)]),
  ]);
}

const checkCurve: Check<typeof OPTIONS> = (reader, values, path) => {
  const { joint, maximumJoint, radius, course, unit: paver } = values;
  if (joint === undefined) return;
  if (maximumJoint !== undefined && maximumJoint.compare(joint) <= 0) {
    const message = 'is not more than the joint at the inner edge. Write a larger joint';
    reader.fail('OUT_OF_RANGE', [...path, 'maximumJoint'], message);
  }
  if (radius === undefined || course === undefined || paver === undefined) return;
  if (radius.times(2).compare(courseSize(course, paver).along.plus(joint)) >= 0) return;
  const message = 'the circle is smaller than a paver and its joint';
  reader.fail('OUT_OF_RANGE', [...path, 'radius'], message);
};

/** `a b / c` */
const scaledLength = (a: Length, b: Length, c: Length): Length =>
  fromSI('length', divideRatios(multiplyRatios(exactOf(a), exactOf(b)), exactOf(c)));

/** Half a turn: pi to 40 digits. */
const HALF_TURN = angle(180, 'deg').si;

function lookAt(
  radius: Length,
  { depth, along }: CourseSize,
  joint: Length,
  most: Length,
): CurveAtRadius {
  const pitch = along.plus(joint);
  const outer = radius.plus(depth);
  const outerJoint = scaledLength(pitch, outer, radius).minus(along);
  const round = radius.times(2).times(HALF_TURN);
  const units = wholeDown(exactOf(round), exactOf(pitch));
  return {
    outerJoint,
    isWithinLimit: outerJoint.compare(most) <= 0,
    taper: scaledLength(pitch, depth, outer),
    chordGap: fromSI('length', sagitta(exactOf(radius), exactOf(along.dividedBy(2)))),
    circle: { units, innerJoint: round.dividedBy(units).minus(along) },
  };
}

const radiusStep = (
  { radius, joint, depth, along }: CourseSize & { readonly radius: Length; readonly joint: Length },
  { outerJoint }: CurveAtRadius,
): Step =>
  derivedStep({
    title: 'Outer joint at the radius',
    formula: 'jr = (w + j) * (R + d) / R - w',
    given: [
      given('w', 'size along the curve', along),
      given('j', 'inner joint', joint),
      given('R', 'inner radius', radius),
      given('d', 'depth of the course', depth),
    ],
    result: given('jr', 'outer joint', outerJoint),
  });

/** `R - sqrt(R^2 - h^2)` */
const sagitta = (radius: Ratio, half: Ratio): Ratio =>
  subtractRatios(
    radius,
    squareRoot(subtractRatios(multiplyRatios(radius, radius), multiplyRatios(half, half))),
  );
