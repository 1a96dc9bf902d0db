import type { QuantityRule } from '../input/reader.js';
import { angle, length } from '../units/construct.js';

const SITE = length(10, 'km');

/** A length on a site: a chord, a side, a radius. Internal. */
export const SITE_LENGTH: QuantityRule<'length'> = Object.freeze({ sign: 'positive', most: SITE });

/** A length on a site that may be nothing. Internal. */
export const SITE_LENGTH_OR_NONE: QuantityRule<'length'> = Object.freeze({
  sign: 'not-negative',
  most: SITE,
});

/** A standard uncertainty of a measured length. Internal. */
export const UNCERTAINTY: QuantityRule<'length'> = Object.freeze({
  sign: 'not-negative',
  most: length(10, 'm'),
});

/** A radius: flat arcs have large ones. Internal. */
export const RADIUS: QuantityRule<'length'> = Object.freeze({
  sign: 'positive',
  most: length(1000, 'km'),
});

/** A turn from one straight to the next: less than straight back. Internal. */
export const TURN: QuantityRule<'angle'> = Object.freeze({
  sign: 'positive',
  most: angle('179.9 deg'),
});

/** The most rows a table of offsets has: more is a slip of a unit. Internal. */
export const MOST_ROWS = 2000;
