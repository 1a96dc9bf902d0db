import { length } from '../units/construct.js';
import type { QuantityRule } from '../input.js';

const MOST = length(5, 'm');

/** A layer or pavement thickness: more than zero and no more than 5 m. */
export const THICKNESS: QuantityRule<'length'> = Object.freeze({ sign: 'positive', most: MOST });

/** A height or thickness that may be nothing. */
export const THICKNESS_OR_NONE: QuantityRule<'length'> = Object.freeze({
  sign: 'not-negative',
  most: MOST,
});

/** A difference of level, up or down. */
export const LEVEL_DIFFERENCE: QuantityRule<'length'> = Object.freeze({ sign: 'any', most: MOST });
