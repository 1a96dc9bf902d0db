import type { QuantityRule } from '../input/reader.js';
import { force, length, lineWeight, slope } from '../units/construct.js';

/** A level on the site, above or below its datum. Internal. */
export const ELEVATION: QuantityRule<'length'> = Object.freeze({
  sign: 'any',
  most: length(10, 'km'),
});

/** A depth or height between string, ground and surfaces. Internal. */
export const LEVEL: QuantityRule<'length'> = Object.freeze({ sign: 'any', most: length(10, 'm') });

/** A place along a string. Internal. */
export const STATION: QuantityRule<'length'> = Object.freeze({
  sign: 'any',
  most: length(100, 'km'),
});

/** A string from tie to tie. Internal. */
export const SPAN: QuantityRule<'length'> = Object.freeze({
  sign: 'positive',
  most: length(10, 'km'),
});

/** How far a stake stands off the edge. Internal. */
export const SET_OFF: QuantityRule<'length'> = Object.freeze({
  sign: 'not-negative',
  most: length(100, 'm'),
});

/** A tolerance for the sag of a string. Internal. */
export const SAG_TOLERANCE: QuantityRule<'length'> = Object.freeze({
  sign: 'positive',
  most: length(10, 'm'),
});

/** A cross slope or the slope of a string: less steep than a wall. Internal. */
export const SLOPE: QuantityRule<'slope'> = Object.freeze({ sign: 'any', most: slope(1, 'ratio') });

/** The pull in a string. Internal. */
export const TENSION: QuantityRule<'force'> = Object.freeze({
  sign: 'positive',
  most: force(1000, 'kN'),
});

/** The weight of a string per length. Internal. */
export const WEIGHT: QuantityRule<'line-weight'> = Object.freeze({
  sign: 'positive',
  most: lineWeight(1000, 'N/m'),
});
