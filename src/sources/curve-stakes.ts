import { printed, type ReferenceValue } from './reference-value.js';

/**
 * Working rules for curves and fixes. Common practice without a source: confirm before you rely on
 * them.
 */
export const CURVE_PRACTICE: Readonly<{
  /** An arc with a smaller turn is too flat to find its radius from a few stakes. */
  flatTurn: ReferenceValue;
  /** Stakes on a curve closer than this: bend a strip or cut a template instead. */
  closestStakes: ReferenceValue;
  /**
   * Two tapes that cross at less than this, or at more than 180 degrees less this, give a weak fix.
   */
  weakCrossing: ReferenceValue;
}> = Object.freeze({
  flatTurn: printed('10', 'deg', 'common-practice'),
  closestStakes: printed('0.4', 'm', 'common-practice'),
  weakCrossing: printed('30', 'deg', 'common-practice'),
});
