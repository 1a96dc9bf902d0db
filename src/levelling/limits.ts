import type { QuantityRule } from '../input/reader.js';
import { length, slope } from '../units/construct.js';

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

/** A spirit level or straightedge: up to 20 m. */
export const RULER: QuantityRule<'length'> = lengthRule('positive', 20);

/** A grade that is dialled in, of either sign: up to 1 in 1. */
export const GRADE: QuantityRule<'slope'> = Object.freeze({ sign: 'any', most: slope(1, 'ratio') });

/** A slope to make: more than zero, up to 1 in 1. */
export const SLOPE_LIMIT: QuantityRule<'slope'> = Object.freeze({ ...GRADE, sign: 'positive' });

/** An error, a tolerance, an uncertainty: up to 10 m. */
export const TOLERANCE: QuantityRule<'length'> = lengthRule('not-negative', 10);

/** An error of either sign: up to 10 m. */
export const ERROR: QuantityRule<'length'> = lengthRule('any', 10);

/** A tolerance that leaves something. */
export const ALLOWED: QuantityRule<'length'> = lengthRule('positive', 10);
