import type { Length } from '../units/quantity.js';

/** Passes, fails, or cannot be told from what was measured. */
export type Verdict = 'pass' | 'unclear' | 'fail';

/** Standard uncertainties to either side that are taken as doubt: about 95 % (common practice). */
const COVERAGE = 2;

/**
 * A size against a tolerance. Without an uncertainty a size on the tolerance passes; with one, what
 * lies within twice the standard uncertainty of the tolerance is unclear. Internal.
 */
export function verdictOf(size: Length, tolerance: Length, uncertainty?: Length): Verdict {
  if (uncertainty === undefined) return size.compare(tolerance) <= 0 ? 'pass' : 'fail';
  const doubt = uncertainty.times(COVERAGE);
  if (size.plus(doubt).compare(tolerance) <= 0) return 'pass';
  return size.minus(doubt).compare(tolerance) > 0 ? 'fail' : 'unclear';
}

/** The worst of several verdicts. Internal. */
export function worstOf(verdicts: readonly Verdict[]): Verdict {
  if (verdicts.includes('fail')) return 'fail';
  return verdicts.includes('unclear') ? 'unclear' : 'pass';
}
