import { Decimal40, ONE, Wide } from './decimal.js';
import { isSmall, ratio, widen, type Ratio } from './ratio.js';

/**
 * The square root of a ratio that is not negative: exact for perfect squares, else to 40 digits.
 * `sqrt(n / d) = sqrt(n d) / d`, so that a square of thirds comes out exact too. Internal.
 */
export function squareRoot(a: Ratio): Ratio {
  if (isSmall(a)) {
    const root = Math.sqrt(a.n * a.d);
    if (Number.isInteger(root) && root <= 9e7) return ratio(new Wide(root), new Wide(a.d));
  }
  const { n, d } = widen(a);
  const square = n.times(d);
  const root = new Wide(Decimal40.sqrt(square));
  const isExact = d === ONE || root.times(root).eq(square);
  return isExact ? ratio(root, d) : ratio(new Wide(Decimal40.div(root, d)));
}

/** True for a root that had to be rounded to 40 digits. Internal. */
export const isRoundedRoot = (root: Ratio): boolean => !isSmall(root) && root.d === ONE;
