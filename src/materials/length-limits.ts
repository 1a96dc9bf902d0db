import { object, quantity } from '../input/field.js';
import type { QuantityRange } from '../input/ranges.js';
import type { Field, Values } from '../input/shape.js';
import type { LengthInput } from '../units/construct.js';
import { shapeOf } from '../input/shape.js';
import { refuseCrossed } from './within-limits.js';

/** The least and the most that a length may be; on a limit it passes. */
export interface LengthLimitsInput {
  /** The least that passes [length]. */
  readonly least: LengthInput;
  /** The most that passes [length], no less than `least`. */
  readonly most: LengthInput;
}

const shapeWithin = (range: QuantityRange<'length'>) =>
  shapeOf<LengthLimitsInput>()({ least: quantity(range), most: quantity(range) });

/** Limits of a length within a range of the table. Internal. */
export const lengthLimits = (
  range: QuantityRange<'length'>,
): Field<Values<ReturnType<typeof shapeWithin>>> =>
  object(shapeWithin(range), (reader, { least, most }, path) => {
    if (least === undefined || most === undefined) return;
    refuseCrossed(reader, most.compare(least) < 0, path);
  });
