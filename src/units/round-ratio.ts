import { ONE, type Decimal } from './decimal.js';
import { isSmall, ratio, wholeRatio, widen, type BigRatio, type Ratio } from './ratio.js';

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
  const [x, y] = [widen(a), widen(b)];
  return roundBig({ n: x.n.times(y.d), d: x.d.times(y.n) }, rounding);
}

function roundBig({ n, d }: BigRatio, rounding: Rounding): Ratio {
  const size = n.abs();
  const whole = size.divToInt(d);
  const rest = size.minus(whole.times(d));
  const isOdd = !whole.mod(2).isZero();
  const up = !rest.isZero() && goesUp(isOdd, rest, d.minus(rest), rounding);
  const rounded: Decimal = up ? whole.plus(ONE) : whole;
  return ratio(n.isNegative() ? rounded.neg() : rounded);
}

/** Whether a part goes up, from how much is over and how much is missing to the next whole. */
function goesUp<T extends number | Decimal>(
  isOdd: boolean,
  over: T,
  missing: T,
  rounding: Rounding,
): boolean {
  if (rounding === 'up') return true;
  if (rounding === 'down') return false;
  const order = typeof over === 'number' ? Math.sign(over - Number(missing)) : over.cmp(missing);
  if (order !== 0) return order > 0;
  return rounding === 'half-up' || isOdd;
}
