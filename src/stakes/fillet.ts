import { fault } from '../errors.js';
import { exactlyOne } from '../input/exactly-one.js';
import { optional, quantity } from '../input/field.js';
import { likeWritten } from '../input/like-written.js';
import { RADIUS, SITE_LENGTH, TURN } from '../input/ranges.js';
import { asWritten } from '../input/read-amount.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { entry } from '../invariant.js';
import { min } from '../units/aggregate.js';
import type { AngleInput, LengthInput } from '../units/construct.js';
import type { Angle, Length } from '../units/quantity.js';
import { NO_LENGTH } from '../units/zero.js';
import { formulaStep, given, type Step, withWorking, type Worked } from '../working.js';
import { curveElements, halfTurn, type CurveElements } from './curve-elements.js';
import { pair } from './pair.js';

/** A corner to round off. */
export interface FilletOptions {
  /**
   * Turn from the first straight to the second [angle], more than 0 and at most 179 degrees. A
   * square corner turns 90 degrees; an inner angle of 108 degrees turns 72.
   */
  readonly turn: AngleInput;
  /** Radius of the arc [length], more than 0 and at most 1000 km. Give this or `tangent`. */
  readonly radius?: LengthInput;
  /**
   * Distance from the corner to the start of the arc [length], more than 0 and at most 1000 km.
   * Give this or `radius`.
   */
  readonly tangent?: LengthInput;
  /**
   * Length of straight available on each side of the corner [two lengths]. Default: not checked.
   */
  readonly sides?: readonly [LengthInput, LengthInput];
}

const OPTIONS = shapeOf<FilletOptions>()({
  turn: quantity(TURN),
  radius: optional(quantity(RADIUS)),
  tangent: optional(quantity(RADIUS)),
  sides: optional(pair(quantity(SITE_LENGTH), 'sides')),
});

/** A corner rounded off by an arc. */
export interface Fillet extends CurveElements, Worked {
  /** Radius of the arc [length]. */
  readonly radius: Length;
  /** Maximum radius that the sides have room for [length]; null if no sides are given. */
  readonly maximumRadius: Length | null;
}

/**
 * Rounds off a corner between two straights: tangent `T = R tan(D/2)`, arc `L = R D`, chord
 * `2 R sin(D/2)`, middle ordinate `R (1 - cos(D/2))`, external `R (1 / cos(D/2) - 1)`, and the area
 * between the corner and the arc, `R T - R^2 D / 2`. Deduct that area at a corner that points outward,
 * add it at one that points inward.
 *
 * @param options - see {@link FilletOptions}
 * @returns radius, tangent, arc, chord, middle ordinate, external [length] and corner [area]
 * @throws `TANGENTS_OVERLAP`, `CONFLICTING_FIELDS`, `REQUIRED`, `NOT_POSITIVE`, `OUT_OF_RANGE` and the
 *   reading codes
 * @source curve-stakeout
 * @example
 * const corner = fillet({ turn: '90 deg', radius: '2 m' });
 * corner.tangent.to('m').toFixed(3) //=> '2.000'
 * corner.arcLength.to('m').toFixed(3) //=> '3.142'
 */
export function fillet(options: FilletOptions): Fillet {
  const read = readOptions(options, OPTIONS, (reader, _, path, raw) => {
    exactlyOne(reader, raw, ['radius', 'tangent'], [...path, 'radius']);
  });
  const { turn, sides } = read;
  const { tan } = halfTurn(turn);
  // one of the two is given
  const radius = read.tangent?.dividedBy(tan) ?? read.radius ?? NO_LENGTH;
  const elements = curveElements(radius, turn);
  if (sides !== undefined) requireRoom(options, elements.tangent, sides);
  const maximumRadius = sides === undefined ? null : min(sides).dividedBy(tan);
  return withWorking({ radius, ...elements, maximumRadius }, () =>
    showWorking(turn, radius, elements),
  );
}

function requireRoom(
  { radius, tangent, sides }: FilletOptions,
  reach: Length,
  [first, second]: readonly [Length, Length],
): void {
  const short = first.compare(second) <= 0 ? 0 : 1;
  const room = entry([first, second], short);
  if (reach.compare(room) <= 0) return;
  const begins = likeWritten(reach, radius ?? tangent);
  const has = asWritten(sides?.[short], room);
  const message = `the arc would begin ${begins} from the corner, and a side has only ${has}. Round it off by less`;
  throw fault('TANGENTS_OVERLAP', message, {}, [tangent === undefined ? 'radius' : 'tangent']);
}

function showWorking(turn: Angle, radius: Length, made: CurveElements): Step[] {
  const from = [given('R', 'radius', radius), given('D', 'turn', turn)];
  const step = (title: string, formula: string, result: Step['result']): Step =>
    formulaStep({
      title,
      formula,
      given: from,
      result,
      source: 'curve-stakeout',
    });
  return [
    step('Tangent', 'T = R * tan(D / 2)', given('T', 'corner to arc', made.tangent)),
    step('Length of the arc', 'L = R * D', given('L', 'arc', made.arcLength)),
    step('Chord', 'C = 2 * R * sin(D / 2)', given('C', 'chord', made.chord)),
    step(
      'Middle ordinate',
      'M = R * (1 - cos(D / 2))',
      given('M', 'middle ordinate', made.middleOrdinate),
    ),
    step('External', 'E = R * (1 / cos(D / 2) - 1)', given('E', 'corner to arc', made.external)),
  ];
}
