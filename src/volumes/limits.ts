import type { QuantityRule } from '../input/reader.js';
import { area, density, length, mass, slope, volume } from '../units/construct.js';

/** A plan area: up to 10 km2. */
export const AREA = Object.freeze({ sign: 'not-negative', most: area(1000, 'ha') } as const);

/** A layer or a depth: up to 20 m. */
export const LAYER = Object.freeze({ sign: 'not-negative', most: length(20, 'm') } as const);

/** Weight of soil, stone or paving: up to 5 t/m3. */
export const DENSITY = Object.freeze({ sign: 'positive', most: density(5, 't/m3') } as const);

/** Weight of a load on a truck, including its water: up to 10 t/m3. */
export const LOADED_DENSITY = Object.freeze({
  sign: 'positive',
  most: density(10, 't/m3'),
} as const);

/** A truck box: up to 1000 m3. */
export const BOX = Object.freeze({ sign: 'positive', most: volume(1000, 'm3') } as const);

/** A payload: up to 1000 t. */
export const PAYLOAD = Object.freeze({ sign: 'positive', most: mass(1000, 't') } as const);

/** Moisture of dry mass, waste, breakage: a fraction, not a percentage. */
export const FRACTION = Object.freeze({ sign: 'not-negative', most: 1 } as const);

/** Elevation: within 10 km of any datum. */
export const ELEVATION: QuantityRule<'length'> = Object.freeze({
  sign: 'any',
  most: length(10, 'km'),
});

/** Coordinate in plan: any grid. */
export const PLACE: QuantityRule<'length'> = Object.freeze({
  sign: 'any',
  most: length(100_000, 'km'),
});

/** Grade of a design, of either sign: up to 10 in 1. */
export const GRADE: QuantityRule<'slope'> = Object.freeze({
  sign: 'any',
  most: slope(10, 'ratio'),
});

/** Distance between two sections: more than zero, up to 100 km. */
export const SPACING: QuantityRule<'length'> = Object.freeze({
  sign: 'positive',
  most: length(100, 'km'),
});

/** Along a strip, from any start. */
export const STATION: QuantityRule<'length'> = Object.freeze({
  sign: 'any',
  most: length(100, 'km'),
});

/** Width across a strip: up to 1 km. */
export const WIDTH: QuantityRule<'length'> = Object.freeze({
  sign: 'not-negative',
  most: length(1, 'km'),
});

/** Depth of a dig: more than zero, up to 20 m. */
export const DEPTH: QuantityRule<'length'> = Object.freeze({
  sign: 'positive',
  most: length(20, 'm'),
});

/** Batter of a side, horizontal over vertical: vertical to ten to one. */
export const BATTER = Object.freeze({ sign: 'not-negative', most: 10 } as const);
