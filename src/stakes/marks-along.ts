import { exactOf, fromSI, type Length } from '../units/quantity.js';
import { multiplyRatios, subtractRatios } from '../units/ratio.js';
import { squareRoot } from '../units/root.js';
import { refuseLongTable } from './refuse-long-table.js';

/** `sqrt(R^2 - x^2)`; x is no longer than R. Internal. */
export function ordinateAt(radius: Length, x: Length): Length {
  const [r, s] = [exactOf(radius), exactOf(x)];
  return fromSI('length', squareRoot(subtractRatios(multiplyRatios(r, r), multiplyRatios(s, s))));
}

/**
 * Marks from 0 at each spacing, with the end and others added, in order and each once. Internal.
 */
export function marksAlong(of: {
  readonly length: Length;
  readonly spacing: Length;
  readonly also?: readonly Length[];
}): readonly Length[] {
  const { length, spacing, also = [] } = of;
  const steps = length.dividedBy(spacing).floor();
  refuseLongTable(steps, 'marks', ['spacing']);
  const regular = Array.from({ length: steps.toNumber() + 1 }, (_, k) => spacing.times(k));
  const sorted = [...regular, ...also, length].sort((a, b) => a.compare(b));
  return sorted.filter((mark, k) => sorted[k - 1]?.equals(mark) !== true);
}
