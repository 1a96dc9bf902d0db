import type { Dimension } from './units/catalogue.js';
import type { Quantity } from './units/quantity.js';

/** How a measurement stands against a limit, its uncertainty counted. */
export type Verdict = 'pass' | 'unclear' | 'fail';

/**
 * Judges by the margin, which is negative beyond the limit: `pass` where the whole band of
 * uncertainty keeps the limit, `fail` where none of it does, `unclear` between. Exactly on the limit
 * with nothing uncertain passes. Internal.
 */
export function verdictOf<D extends Dimension>(
  margin: Quantity<D>,
  uncertainty: Quantity<D>,
): Verdict {
  if (margin.compare(uncertainty) >= 0) return 'pass';
  return margin.plus(uncertainty).isNegative() ? 'fail' : 'unclear';
}

/** The worst of some verdicts; `pass` for none. Internal. */
export function worstVerdict(verdicts: readonly Verdict[]): Verdict {
  if (verdicts.includes('fail')) return 'fail';
  return verdicts.includes('unclear') ? 'unclear' : 'pass';
}
