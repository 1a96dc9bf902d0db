import { density, length, slope } from '../units/construct.js';

/** A station along a profile, an elevation, an offset: within 100 km of nothing. */
export const PLACE = Object.freeze({ sign: 'any', most: length(100, 'km') } as const);

/** A straightedge, a string or the run of a slope: up to 10 km. */
export const SPAN = Object.freeze({ sign: 'positive', most: length(10, 'km') } as const);

/** A layer that is there: up to 20 m. */
export const THICKNESS = Object.freeze({ sign: 'positive', most: length(20, 'm') } as const);

/** A measured thickness, which may be nothing. */
export const MEASURED_THICKNESS = Object.freeze({
  sign: 'not-negative',
  most: length(20, 'm'),
} as const);

/** A lip, a joint, a gap: up to 1 m. */
export const SMALL = Object.freeze({ sign: 'not-negative', most: length(1, 'm') } as const);

/** A tolerance or an uncertainty: up to 1 m. */
export const TOLERANCE = SMALL;

/** A rod reading: up to 20 m. */
export const ROD = MEASURED_THICKNESS;

/** A limit of slope: up to 1 in 1. */
export const SLOPE_LIMIT = Object.freeze({ sign: 'not-negative', most: slope('100%') } as const);

/** A lip at a drain, up or down: up to 1 m. */
export const LIP = Object.freeze({ sign: 'any', most: length(1, 'm') } as const);

/** A density of soil or stone: up to 5 t/m3. */
export const DENSITY = Object.freeze({ sign: 'positive', most: density(5, 't/m3') } as const);

/** A fraction 0 to 1. */
export const FRACTION = Object.freeze({ sign: 'not-negative', most: 1 } as const);

/** A percentage that must be reached: 50 to 110, so that a fraction is caught. */
export const PERCENT = Object.freeze({ sign: 'positive', least: 50, most: 110 } as const);

/** How far a percentage may be off: up to 20. */
export const PERCENT_OFF = Object.freeze({ sign: 'not-negative', most: 20 } as const);
