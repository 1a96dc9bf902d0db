import { object, quantity } from '../../input/field.js';
import { UNIT_SIDE } from '../../input/ranges.js';
import { shapeOf } from '../../input/shape.js';
import type { LengthInput } from '../../units/construct.js';
import type { Area, Length } from '../../units/quantity.js';

/** The plan of a paver: its own size, without joints. */
export interface UnitInput {
  /** Long side [length], more than 0 and at most 5 m. */
  readonly length: LengthInput;
  /** Short side [length], more than 0 and at most 5 m. */
  readonly width: LengthInput;
}

/** The plan of a paver that has been read. Internal. */
export interface Unit {
  readonly length: Length;
  readonly width: Length;
}

/** The plan of a paver. Internal. */
export const unit = object(
  shapeOf<UnitInput>()({ length: quantity(UNIT_SIDE), width: quantity(UNIT_SIDE) }),
);

/** Module of a paver: its own size and one joint each way. Internal. */
export interface Module {
  readonly length: Length;
  readonly width: Length;
  readonly area: Area;
}

/** The module of a paver: size plus joint, each way. Internal. */
export function moduleOf(unit: Unit, joint: Length): Module {
  const [length, width] = [unit.length.plus(joint), unit.width.plus(joint)];
  return { length, width, area: length.times(width) };
}
