import type { FieldPath } from '../errors.js';
import { custom, optional, quantity } from '../input/field.js';
import { SITE_LENGTH, TOLERANCE } from '../input/ranges.js';
import type { Reader } from '../input/reader.js';
import { isLeftOut, readShape, shapeOf, type Field, type Values } from '../input/shape.js';
import type { LengthInput } from '../units/construct.js';
import { between, isZero, type PlanPoint } from '../units/vector.js';
import { pair } from './pair.js';
import { PLAN_PLACE, type PlanPlaceInput } from './plan-stake.js';

/** A fixed point and the length taped from it. */
export interface TapeInput extends PlanPlaceInput {
  /**
   * Level distance from the fixed point to the new point [length], more than 0 and at most 10 km.
   */
  readonly distance: LengthInput;
  /** Standard uncertainty of the taped length [length], 0 to 10 m: give it for both tapes or for neither. Default: not known. */
  readonly uncertainty?: LengthInput;
}

const TAPE = shapeOf<TapeInput>()({
  ...PLAN_PLACE,
  distance: quantity(SITE_LENGTH),
  uncertainty: optional(quantity(TOLERANCE)),
});

/** A taped length that has been read. Internal. */
export type Tape = Values<typeof TAPE>;

/** Two fixed points and the lengths taped from them. Internal. */
export const twoTapes: Field<readonly [Tape, Tape]> = custom((reader, value, path) => {
  const parts: Partial<Tape>[] = [];
  const tape = custom((_, item, at) => {
    const part = readShape(reader, item, at, TAPE);
    parts.push(part);
    // a stand-in with gaps is never used: the reader has a fault
    return part as Tape;
  });
  const tapes = pair(tape, 'fixed points').read(reader, value, path);
  requireUncertainties(reader, parts, path);
  requireApart(reader, parts, path);
  return tapes;
});

/** Refuses an uncertainty for one tape alone. */
function requireUncertainties(
  reader: Reader,
  tapes: readonly Partial<Tape>[],
  path: FieldPath,
): void {
  if (tapes.every(({ uncertainty }) => uncertainty === undefined)) return;
  tapes.forEach((tape, k) => {
    if (!isLeftOut(tape, 'uncertainty')) return;
    const message = 'missing. The other tape has one. Give it for both tapes or for neither';
    reader.fail('REQUIRED', [...path, k, 'uncertainty'], message);
  });
}

/** Refuses two fixed points at the same location. */
function requireApart(
  reader: Reader,
  [first, second]: readonly Partial<Tape>[],
  path: FieldPath,
): void {
  const [from, to] = [placeOf(first), placeOf(second)];
  if (from === undefined || to === undefined || !isZero(between(from, to))) return;
  const message = 'both fixed points are the same point. Tape from another one';
  reader.fail('POINTS_COINCIDE', [...path, 1], message);
}

const placeOf = ({ x, y }: Partial<Tape> = {}): PlanPoint | undefined =>
  x === undefined || y === undefined ? undefined : { x, y };
