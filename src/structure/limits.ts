import { length, pressure } from '../units/construct.js';

/** Passes of the standard axle over the life of a pavement. */
export const ESALS = Object.freeze({ sign: 'positive', most: 1e10 } as const);
/** Percent. Below a half the pavement would be meant to fail. */
export const RELIABILITY = Object.freeze({ sign: 'positive', least: 50, most: 99.99 } as const);
export const DEVIATE = Object.freeze({ sign: 'any', least: -4, most: 0 } as const);
/** Of the logarithm of the traffic. */
export const DEVIATION = Object.freeze({ sign: 'not-negative', most: 1 } as const);
/** Below a fifth the equation no longer rises with the structural number everywhere. */
export const LOSS = Object.freeze({ sign: 'positive', least: 0.2, most: 4 } as const);
export const MODULUS = Object.freeze({ sign: 'positive', most: pressure(100_000, 'MPa') } as const);
export const MOST_STRUCTURE = 30;
export const STRUCTURE = Object.freeze({ sign: 'positive', most: MOST_STRUCTURE } as const);
export const STRUCTURE_OR_NONE = Object.freeze({
  sign: 'not-negative',
  most: MOST_STRUCTURE,
} as const);

export const THICKNESS = Object.freeze({ sign: 'positive', most: length(5, 'm') } as const);
/** Per inch of layer. */
export const COEFFICIENT = Object.freeze({ sign: 'positive', most: 1 } as const);
export const DRAINAGE = Object.freeze({ sign: 'positive', least: 0.2, most: 1.5 } as const);

export const PER_DAY = Object.freeze({ sign: 'not-negative', most: 1e6 } as const);
/** Damage of one pass over that of the standard axle. */
export const AXLE_FACTOR = Object.freeze({ sign: 'not-negative', most: 1e4 } as const);
export const YEARS = Object.freeze({ sign: 'positive', most: 100 } as const);
export const YEARS_OR_NONE = Object.freeze({ sign: 'not-negative', most: 100 } as const);
/** A share a year. */
export const GROWTH = Object.freeze({ sign: 'any', least: -0.5, most: 1 } as const);
/** So small a growth changes no digit of a result. */
export const NO_GROWTH = 1e-18;
export const PART = Object.freeze({ sign: 'positive', most: 1 } as const);
export const DAYS = Object.freeze({ sign: 'positive', most: 366 } as const);
/** Percent. */
export const CBR = Object.freeze({ sign: 'positive', most: 200 } as const);
