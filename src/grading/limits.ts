import type { QuantityRule } from '../input/reader.js';
import { angle, length, slope } from '../units/construct.js';

const lengthRule = (sign: 'positive' | 'not-negative' | 'any', most: number) =>
  Object.freeze({ sign, most: length(most, 'm') } as const);

/** Elevation above any datum: within 10 km. */
export const ELEVATION: QuantityRule<'length'> = lengthRule('any', 10_000);

/** Place along a line: within 100 km. */
export const STATION: QuantityRule<'length'> = lengthRule('any', 100_000);

/** Coordinate in plan: any grid. */
export const PLACE: QuantityRule<'length'> = lengthRule('any', 100_000_000);

/** Distance in plan: more than zero, up to 100 km. */
export const DISTANCE: QuantityRule<'length'> = lengthRule('positive', 100_000);

/** Height of a rise, a step, a vehicle: more than zero, up to 100 m. */
export const RISE: QuantityRule<'length'> = lengthRule('positive', 100);

/** Uncertainty or merging distance: up to 100 m. */
export const MARGIN: QuantityRule<'length'> = lengthRule('not-negative', 100);

/** Slope of either sign, up to 10 in 1. */
export const SLOPE: QuantityRule<'slope'> = Object.freeze({
  sign: 'any',
  most: slope(10, 'ratio'),
});

/** Slope limit: more than zero. */
export const SLOPE_LIMIT: QuantityRule<'slope'> = Object.freeze({ ...SLOPE, sign: 'positive' });

/** Uncertainty of a slope. */
export const SLOPE_MARGIN: QuantityRule<'slope'> = Object.freeze({
  ...SLOPE,
  sign: 'not-negative',
});

/** A direction: up to ten whole turns either way. */
export const AZIMUTH: QuantityRule<'angle'> = Object.freeze({
  sign: 'any',
  most: angle(3600, 'deg'),
});
