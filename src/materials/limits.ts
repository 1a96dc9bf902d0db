// An order starts from volumes and their states, so this folder builds on `volumes`: the ranges of
// areas, layers, densities and fractions are the same there and here.
import { AREA, DENSITY, FRACTION, LAYER } from '../volumes/limits.js';
import type { NumberRule, QuantityRule } from '../input/reader.js';
import { length, mass, volume } from '../units/construct.js';

export { AREA, DENSITY, FRACTION, LAYER };

/** No length at all: what is left out. */
export const NO_LENGTH = length(0, 'm');

/** A side or the thickness of a unit: up to 5 m. */
export const UNIT_SIDE: QuantityRule<'length'> = Object.freeze({
  sign: 'positive',
  most: length(5, 'm'),
});

/** A joint that may be closed: up to 100 mm. */
export const JOINT: QuantityRule<'length'> = Object.freeze({
  sign: 'not-negative',
  most: length(100, 'mm'),
});

/** A joint that is filled: more than zero, up to 100 mm. */
export const OPEN_JOINT: QuantityRule<'length'> = Object.freeze({
  sign: 'positive',
  most: length(100, 'mm'),
});

/** A run, an edge, a roll: up to 100 km. */
export const RUN: QuantityRule<'length'> = Object.freeze({
  sign: 'not-negative',
  most: length(100, 'km'),
});

/** A run that must be there. */
export const RUN_OF_SOME: QuantityRule<'length'> = Object.freeze({
  sign: 'positive',
  most: length(100, 'km'),
});

/** A thickness that must be there: up to 20 m. */
export const LAYER_OF_SOME: QuantityRule<'length'> = Object.freeze({
  sign: 'positive',
  most: LAYER.most,
});

/** A difference of level, up or down: up to 20 m. */
export const LEVEL_DIFFERENCE: QuantityRule<'length'> = Object.freeze({
  sign: 'any',
  most: LAYER.most,
});

/** A distance that may be nothing: up to 20 m. */
export const SHORT: QuantityRule<'length'> = Object.freeze({
  sign: 'not-negative',
  most: length(20, 'm'),
});

/** A bag: up to 10 t. */
export const BAG: QuantityRule<'mass'> = Object.freeze({ sign: 'positive', most: mass(10, 't') });

/** A delivery: up to 10 000 t. */
export const TICKET: QuantityRule<'mass'> = Object.freeze({
  sign: 'positive',
  most: mass(10_000, 't'),
});

/** A volume in place that must be there: up to 10 million m3. */
export const HOLE: QuantityRule<'volume'> = Object.freeze({
  sign: 'positive',
  most: volume(10_000_000, 'm3'),
});

/** A share of more than nothing and no more than all. */
export const SHARE: NumberRule = Object.freeze({ sign: 'positive', most: 1 });
