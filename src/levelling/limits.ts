import type { QuantityRule } from '../input.js';
import { length } from '../units/construct.js';

const lengthRule = (sign: 'positive' | 'not-negative' | 'any', most: number) =>
  Object.freeze({ sign, most: length(most, 'm') } as const);

/** Elevation above any datum: within 10 km. */
export const ELEVATION: QuantityRule<'length'> = lengthRule('any', 10_000);

/** Reading on a rod: not negative, up to 20 m. */
export const READING: QuantityRule<'length'> = lengthRule('not-negative', 20);

/** Length of a sight or a side: more than zero, up to 10 km. */
export const DISTANCE: QuantityRule<'length'> = lengthRule('positive', 10_000);

/** Length of a sight that may be nothing, or a distance along a line of levels. */
export const SIGHT: QuantityRule<'length'> = lengthRule('not-negative', 100_000);

/** A coordinate about the instrument. */
export const PLACE: QuantityRule<'length'> = lengthRule('any', 10_000);

/** An error, a tolerance, an uncertainty: up to 10 m. */
export const TOLERANCE: QuantityRule<'length'> = lengthRule('not-negative', 10);

/** A tolerance that leaves something. */
export const ALLOWED: QuantityRule<'length'> = lengthRule('positive', 10);
