import type { Dimension } from './units/catalogue.js';
import type { AnyQuantity, Quantity } from './units/quantity.js';

/** Result of comparing a measurement with a limit, including its uncertainty. */
export type Verdict = 'pass' | 'unclear' | 'fail';

/** True for a verdict. Internal. */
export const isVerdict = (value: unknown): value is Verdict =>
  value === 'pass' || value === 'unclear' || value === 'fail';

/**
 * Judges by the margin, which is negative out of limits: `pass` if the whole band of uncertainty is
 * within the limit, `fail` if none of it is, else `unclear`. A value exactly on the limit, without
 * uncertainty, passes. Internal.
 */
export function verdictOf<D extends Dimension>(
  margin: Quantity<D>,
  uncertainty: Quantity<D>,
): Verdict {
  if (margin.compare(uncertainty) >= 0) return 'pass';
  return margin.plus(uncertainty).isNegative() ? 'fail' : 'unclear';
}

/** Judges by the margin without uncertainty: a value exactly on the limit passes. Internal. */
export const exactVerdict = (margin: AnyQuantity): 'pass' | 'fail' =>
  margin.isNegative() ? 'fail' : 'pass';

/** The worst of several verdicts; `pass` if there are none. Internal. */
export function worstVerdict(verdicts: readonly Verdict[]): Verdict {
  if (verdicts.includes('fail')) return 'fail';
  return verdicts.includes('unclear') ? 'unclear' : 'pass';
}
