import type { FieldPath } from '../errors.js';
import { custom, object, quantity } from '../input/field.js';
import { PLACE } from '../input/ranges.js';
import type { Reader } from '../input/reader.js';
import { shapeOf, type Field } from '../input/shape.js';
// a dig is read, checked and measured as an outline
import { chordsOf } from '../outline/chords.js';
import { readOutline, type Outline } from '../outline/read-outline.js';
import { ringsOf } from '../outline/ring.js';
import type { LengthInput } from '../units/construct.js';
import { ratioToNumber } from '../units/ratio.js';
import { between, type PlanPoint, type Vector } from '../units/vector.js';

/** A point in plan, in the coordinates of the dig. */
export interface PlaceInput {
  /** Plan coordinate [length], within 10 km of the dig. */
  readonly x: LengthInput;
  /** Plan coordinate [length], square to x, within 10 km of the dig. */
  readonly y: LengthInput;
}

/** A point in plan. Internal. */
export const placeField: Field<PlanPoint> = object(
  shapeOf<PlaceInput>()({ x: quantity(PLACE), y: quantity(PLACE) }),
);

/** The outline of a whole dig, with its arcs and holes. Internal. */
export const drawnDig: Field<Outline> = custom(readOutline);

/** Angle of a chord, in radians, that stays within 1/300 000 of the radius of its arc. */
const STEP = 0.005;
/** A point farther from the dig than this [m] is a mistake. */
const FARTHEST = 10_000;

/**
 * The outer ring of a dig, then its holes, relative to its first point, with chords for arcs.
 * Internal.
 */
export const ringsOfDig = (dig: Outline): readonly (readonly Vector[])[] =>
  ringsOf(dig).map((ring, index) => chordsOf(ring, index > 0, STEP).points);

/** Refuses a point too far from a dig. Internal. */
export function refuseFarPlace(
  reader: Reader,
  place: PlanPoint,
  { dig, path }: { readonly dig: Outline; readonly path: FieldPath },
): void {
  const far = floatsOf([between(dig.origin, place)]).some((one) => Math.abs(one) > FARTHEST);
  if (!far) return;
  reader.fail('OUT_OF_RANGE', path, 'more than 10 km from the dig. Check the digits and the axes');
}

/** Points interleaved, x0, y0, x1, y1 [m]. Internal. */
export const floatsOf = (points: readonly Vector[]): number[] =>
  points.flatMap(({ x, y }) => [ratioToNumber(x), ratioToNumber(y)]);
