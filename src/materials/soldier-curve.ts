import { makeReader } from '../input/reader.js';
import { angle, type LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Length } from '../units/quantity.js';
import { divideRatios, multiplyRatios, subtractRatios, type Ratio } from '../units/ratio.js';
import { squareRoot } from '../units/root.js';
import { given, withWorking, type Worked } from '../working.js';
import { COURSES, courseSize, type Course, type CourseSize } from './course.js';
import { JOINT, OPEN_JOINT, RUN_OF_SOME } from './limits.js';
import { readUnit, type UnitInput } from './read-unit.js';
import { wholeDown } from './whole-number.js';

/** A course at one radius. */
export interface CurveAtRadius {
  /** Joint at the outer edge of the course. */
  readonly outerJoint: Length;
  /** True where the outer joint is within the limit without cutting. */
  readonly ok: boolean;
  /** What is cut off the inner end of each unit, in all, so that its joints are even. */
  readonly taper: Length;
  /** How far the middle of a unit's straight side stands off the arc. */
  readonly chordGap: Length;
  /** Units of a full circle, and the inner joint at which they close it. */
  readonly circle: { readonly units: number; readonly innerJoint: Length };
}

/** How tight a curve a course of uncut units can follow. */
export interface SoldierCurve extends Worked {
  /** Smallest inner radius at which the outer joint stays within its limit. */
  readonly leastRadius: Length;
  /** The same at the radius asked for; null where none was. */
  readonly atRadius: CurveAtRadius | null;
}

/**
 * A course of rectangular units on a curve: joints open toward the outside. With depth d, size w along
 * the curve and inner joint j: `outer joint = (w + j) (R + d) / R - w`, and
 * `least radius = d (w + j) / (most joint - j)`. Units tapered to even joints lose
 * `(w + j) d / (R + d)` of their inner end. Arc lengths stand for chords, which is right to
 * `w^2 / (8 R)` ({@link CurveAtRadius.chordGap}).
 *
 * @param options.unit - its own size without joints: `length` and `width` [length]
 * @param options.course - default `soldier`: the long side square to the edge
 * @param options.joint - at the inner edge [length], 0 to 100 mm
 * @param options.mostJoint - at the outer edge [length], more than `joint`
 * @param options.radius - of the inner edge [length], if a radius is to be looked at
 * @returns least radius; at the radius: outer joint, whether it passes, taper, chord gap, full circle
 * @throws `OUT_OF_RANGE`, `NOT_POSITIVE`, `NEGATIVE`, `UNKNOWN_CHOICE` and the reading codes
 * @source derived
 * @example
 * const curve = soldierCurve({
 *   unit: { length: '200 mm', width: '100 mm' },
 *   joint: '3 mm',
 *   mostJoint: '5 mm',
 *   radius: '3 m',
 * });
 * curve.leastRadius.to('m').toString() //=> '10.3'
 * curve.atRadius?.outerJoint.to('mm').toFixed(2) //=> '9.87'
 */
export function soldierCurve(options: {
  readonly unit: UnitInput;
  readonly course?: Course;
  readonly joint: LengthInput;
  readonly mostJoint: LengthInput;
  readonly radius?: LengthInput;
}): SoldierCurve {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const unit = readUnit(reader, fields['unit']);
  const course = reader.choice(fields['course'] ?? 'soldier', ['course'], COURSES);
  const joint = reader.quantity('length', fields['joint'], ['joint'], JOINT);
  const most = reader.quantity('length', fields['mostJoint'], ['mostJoint'], OPEN_JOINT);
  const size = courseSize(course, unit);
  const radius =
    fields['radius'] === undefined
      ? null
      : reader.quantity('length', fields['radius'], ['radius'], RUN_OF_SOME);
  if (most.compare(joint) <= 0) {
    reader.fail('OUT_OF_RANGE', ['mostJoint'], 'must be more than the joint at the inner edge');
  }
  reader.finish();
  if (radius !== null && radius.times(2).compare(size.along.plus(joint)) < 0) {
    reader.fail('OUT_OF_RANGE', ['radius'], 'the circle is smaller than a unit and its joint');
    reader.finish();
  }

  const { depth, along } = size;
  const pitch = along.plus(joint);
  const leastRadius = scaledLength(depth, pitch, most.minus(joint));
  const atRadius = radius === null ? null : lookAt(radius, size, joint, most);
  return withWorking({ leastRadius, atRadius }, () => [
    {
      title: 'Tightest curve for uncut units',
      formula: 'R = d (w + j) / (j1 - j)',
      given: [
        given('d', 'depth of the course', depth),
        given('w', 'size along the curve', along),
        given('j', 'inner joint', joint),
        given('j1', 'greatest outer joint', most),
      ],
      result: given('R', 'least inner radius', leastRadius),
      source: 'derived',
    },
    ...(radius === null || atRadius === null
      ? []
      : [
          {
            title: 'Outer joint at the radius',
            formula: "j' = (w + j) (R + d) / R - w",
            given: [
              given('w', 'size along the curve', along),
              given('j', 'inner joint', joint),
              given('R', 'inner radius', radius),
              given('d', 'depth of the course', depth),
            ],
            result: given("j'", 'outer joint', atRadius.outerJoint),
            source: 'derived' as const,
          },
        ]),
  ]);
}

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
    ok: outerJoint.compare(most) <= 0,
    taper: scaledLength(pitch, depth, outer),
    chordGap: fromSI('length', sagitta(exactOf(radius), exactOf(along.dividedBy(2)))),
    circle: { units, innerJoint: round.dividedBy(units).minus(along) },
  };
}

/** `R - sqrt(R^2 - h^2)` */
const sagitta = (radius: Ratio, half: Ratio): Ratio =>
  subtractRatios(
    radius,
    squareRoot(subtractRatios(multiplyRatios(radius, radius), multiplyRatios(half, half))),
  );
