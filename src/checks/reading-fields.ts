import { list, object, optional, quantity } from '../input/field.js';
import { TOLERANCE } from '../input/ranges.js';
import type { Check, Field, Shape, Values } from '../input/shape.js';
import { NO_LENGTH } from '../units/zero.js';

/** A reading with a name. */
export interface NamedReadingInput {
  /** What the crew calls it. Each id once. */
  readonly id: string;
}

/** Readings of a check, each id once. Internal. */
export const readingsOf = <S extends Shape>(
  reading: S,
  check?: Check<S>,
): Field<readonly Values<S>[]> => list(object(reading, check), { of: 'readings', unique: 'id' });

/** Uncertainty of a length, either way; none if it is left out. Internal. */
export const lengthUncertainty = optional(quantity(TOLERANCE), NO_LENGTH);
