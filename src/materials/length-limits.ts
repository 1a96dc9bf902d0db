import { object, quantity } from '../input/field.js';
import type { QuantityRange } from '../input/ranges.js';
import type { Field, Values } from '../input/shape.js';
import type { LengthInput } from '../units/construct.js';
import { shapeOf } from '../input/shape.js';
import { refuseCrossed } from './within-limits.js';

/** A minimum and a maximum length; a length on a limit passes. */
export interface LengthLimitsInput {
  /** Minimum [length]. */
  readonly minimum: LengthInput;
  /** Maximum [length], at least `minimum`. */
  readonly maximum: LengthInput;
}

const shapeWithin = (range: QuantityRange<'length'>) =>
  shapeOf<LengthLimitsInput>()({ minimum: quantity(range), maximum: quantity(range) });

/** Limits of a length within a range of the table. Internal. */
export const lengthLimits = (
  range: QuantityRange<'length'>,
): Field<Values<ReturnType<typeof shapeWithin>>> =>
  object(shapeWithin(range), (reader, { minimum, maximum }, path) => {
    if (minimum === undefined || maximum === undefined) return;
    refuseCrossed(reader, maximum.compare(minimum) < 0, path);
  });
