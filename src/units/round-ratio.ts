import { decimalOf, widened } from './big-ratio.js';
import { isSmall, wholeRatio, type Ratio } from './ratio.js';
import { sizeOf } from './whole.js';

/**
 * How a value between two steps is rounded. Signs do not matter: `up` is away from zero, `down`
 * toward zero, and a tie goes away from zero (`half-up`) or to the even step (`half-even`, the
 * default; NIST SP 811 B.7.1 and ASTM E29 break ties so).
 */
export type Rounding = 'half-up' | 'half-even' | 'up' | 'down';

/** Rounds `a / b` to a whole number, exactly; b is positive. Internal. */
export function roundQuotient(a: Ratio, b: Ratio, rounding: Rounding): Ratio {
  if (isSmall(a) && isSmall(b)) {
    const n = Math.abs(a.n) * b.d;
    const d = a.d * b.n;
    if (n <= Number.MAX_SAFE_INTEGER && d <= Number.MAX_SAFE_INTEGER) {
      const rest = n % d;
      const whole = (n - rest) / d;
      const up = rest !== 0 && goesUp(whole % 2 === 1, rest, d - rest, rounding);
      const rounded = up ? whole + 1 : whole;
      return wholeRatio(a.n < 0 && rounded !== 0 ? -rounded : rounded);
    }
  }
  const x = widened(a);
  const y = widened(b);
  return roundBig(x.n * y.d, x.d * y.n, rounding);
}

function roundBig(n: bigint, d: bigint, rounding: Rounding): Ratio {
  const size = sizeOf(n);
  const whole = size / d;
  const rest = size - whole * d;
  const up = rest !== 0n && goesUp(whole % 2n === 1n, rest, d - rest, rounding);
  const rounded = up ? whole + 1n : whole;
  return decimalOf(n < 0n ? -rounded : rounded, 0);
}

/** Whether a part rounds up, from the excess over the last whole and the gap to the next. */
function goesUp<T extends number | bigint>(
  isOdd: boolean,
  over: T,
  missing: T,
  rounding: Rounding,
): boolean {
  if (rounding === 'up') return true;
  if (rounding === 'down') return false;
  if (over !== missing) return over > missing;
  return rounding === 'half-up' || isOdd;
}
