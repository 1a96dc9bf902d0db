import { printed } from './reference-value.js';

/**
 * Delivered dry stone over what the measured hole should hold: below or above these the tickets and
 * the hole do not agree. Common practice, no source.
 */
export const YIELD_LIMITS = Object.freeze({
  least: printed('0.9', 'ratio', 'common-practice'),
  most: printed('1.1', 'ratio', 'common-practice'),
});
