import { makeReader } from '../input/reader.js';
import { min } from '../units/aggregate.js';
import type { AngleInput, LengthInput } from '../units/construct.js';
import { formatQuantity } from '../units/format-quantity.js';
import type { Angle, Length } from '../units/quantity.js';
import { given, withWorking, type Step, type Worked } from '../working.js';
import { curveElements, halfTurn, type CurveElements } from './curve-elements.js';
import { RADIUS, SITE_LENGTH, TURN } from './limits.js';

/** A corner rounded off by an arc. */
export interface Fillet extends CurveElements, Worked {
  readonly radius: Length;
  /** The largest radius that the sides have room for, where they are given. */
  readonly largestRadius?: Length;
}

/**
 * Rounds off a corner between two straights: tangent `T = R tan(D/2)`, arc `L = R D`, chord
 * `2 R sin(D/2)`, middle ordinate `R (1 - cos(D/2))`, external `R (1 / cos(D/2) - 1)`, and the area
 * between the corner and the arc, `R T - R^2 D / 2`: taken off at a corner that points outward, added
 * at one that points inward.
 *
 * @param options.turn - how far the second straight turns from the first [angle], less than 179.9
 *   degrees: 90 degrees at a square corner. An inner angle of 108 degrees turns 72.
 * @param options.radius - of the arc [length]; or give `tangent`
 * @param options.tangent - from the corner to where the arc begins [length], instead of `radius`
 * @param options.sides - straight to spare on either side of the corner [two lengths], if it is to be
 *   checked
 * @returns radius, tangent, arc, chord, middle ordinate, external [length] and corner [area]
 * @throws `TANGENTS_OVERLAP`, `ONE_OF`, `NOT_POSITIVE`, `OUT_OF_RANGE` and the reading codes
 * @source curve-stakeout
 * @example
 * const corner = fillet({ turn: '90 deg', radius: '2 m' });
 * corner.tangent.to('m').toFixed(3) //=> '2.000'
 * corner.arcLength.to('m').toFixed(3) //=> '3.142'
 */
export function fillet(options: {
  readonly turn: AngleInput;
  readonly radius?: LengthInput;
  readonly tangent?: LengthInput;
  readonly sides?: readonly [LengthInput, LengthInput];
}): Fillet {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const turn = reader.quantity('angle', fields['turn'], ['turn'], TURN);
  if (fields['radius'] !== undefined && fields['tangent'] !== undefined) {
    reader.fail('ONE_OF', ['tangent'], 'give the radius or the tangent, not both');
  }
  const name = fields['tangent'] === undefined ? 'radius' : 'tangent';
  const size = reader.quantity('length', fields[name], [name], RADIUS);
  const sides = fields['sides'] === undefined ? [] : reader.list(fields['sides'], ['sides']);
  const room = sides.map((side, k) => reader.quantity('length', side, ['sides', k], SITE_LENGTH));
  reader.finish();
  const { tan } = halfTurn(turn);
  const radius = name === 'tangent' ? size.dividedBy(tan) : size;
  const elements = curveElements(radius, turn);
  const shortest = room.length === 0 ? undefined : min(room);
  if (shortest !== undefined && elements.tangent.compare(shortest) > 0) {
    const [tangent, side] = [elements.tangent, shortest].map((one) =>
      formatQuantity(one, { as: 'm', places: 3 }),
    );
    const message = `the arc would begin ${tangent} from the corner, but a side has only ${side}`;
    reader.fail('TANGENTS_OVERLAP', [name], message);
    reader.finish();
  }
  const largest = shortest === undefined ? {} : { largestRadius: shortest.dividedBy(tan) };
  return withWorking({ radius, ...elements, ...largest }, () =>
    showWorking(turn, radius, elements),
  );
}

function showWorking(turn: Angle, radius: Length, made: CurveElements): Step[] {
  const from = [given('R', 'radius', radius), given('D', 'turn', turn)];
  const step = (title: string, formula: string, result: Step['result']): Step => ({
    title,
    formula,
    given: from,
    result,
    source: 'curve-stakeout',
  });
  return [
    step('Tangent', 'T = R tan(D/2)', given('T', 'corner to arc', made.tangent)),
    step('Length of the arc', 'L = R D', given('L', 'arc', made.arcLength)),
    step('Chord', 'C = 2 R sin(D/2)', given('C', 'chord', made.chord)),
    step(
      'Middle ordinate',
      'M = R (1 - cos(D/2))',
      given('M', 'middle ordinate', made.middleOrdinate),
    ),
    step('External', 'E = R (1 / cos(D/2) - 1)', given('E', 'corner to arc', made.external)),
  ];
}
