import {
  angle,
  area,
  flow,
  force,
  length,
  mass,
  pressure,
  time,
  volume,
} from '../units/construct.js';

/** A measure on a site: up to 10 km. */
export const LENGTH = Object.freeze({ sign: 'positive', most: length(10, 'km') } as const);
export const LENGTH_OR_NONE = Object.freeze({
  sign: 'not-negative',
  most: length(10, 'km'),
} as const);
export const ANY_LENGTH = Object.freeze({ sign: 'any', most: length(10, 'km') } as const);

/** A depth of dig or a thickness: up to 50 m. */
export const DEPTH = Object.freeze({ sign: 'positive', most: length(50, 'm') } as const);
export const DEPTH_OR_NONE = Object.freeze({
  sign: 'not-negative',
  most: length(50, 'm'),
} as const);

export const AREA = Object.freeze({ sign: 'positive', most: area(1000, 'ha') } as const);
export const VOLUME = Object.freeze({ sign: 'positive', most: volume(1e6, 'm3') } as const);
export const MASS = Object.freeze({ sign: 'positive', most: mass(1e6, 't') } as const);
export const TIME = Object.freeze({ sign: 'positive', most: time(10_000, 'h') } as const);
export const TIME_OR_NONE = Object.freeze({
  sign: 'not-negative',
  most: time(10_000, 'h'),
} as const);
export const FLOW = Object.freeze({ sign: 'positive', most: flow(1000, 'm3/s') } as const);
export const FORCE = Object.freeze({ sign: 'positive', most: force(10_000, 'kN') } as const);
export const PRESSURE = Object.freeze({ sign: 'positive', most: pressure(100, 'MPa') } as const);

/** An angle between flat and plumb. */
export const STEEPNESS = Object.freeze({ sign: 'positive', most: angle(89, 'deg') } as const);

/** A fraction 0 to 1. */
export const FRACTION = Object.freeze({ sign: 'not-negative', most: 1 } as const);
/** A fraction of more than 0, to 1. */
export const PART = Object.freeze({ sign: 'positive', most: 1 } as const);
