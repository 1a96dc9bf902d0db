import { printed } from './reference-value.js';

/**
 * Delivered dry stone over the stone that the measured hole should hold. Outside these limits the
 * tickets and the hole do not agree. Common practice, no source.
 */
export const YIELD_LIMITS = Object.freeze({
  minimum: printed('0.9', 'ratio', 'common-practice'),
  maximum: printed('1.1', 'ratio', 'common-practice'),
});
