import { powerOfTen } from './decimal.js';
import { widen, type Ratio } from './ratio.js';

/** A rational in lowest terms. */
export interface LowestTerms {
  readonly n: bigint;
  readonly d: bigint;
}

/** The value in lowest terms as two whole numbers. */
export function lowestTerms(a: Ratio): LowestTerms {
  const big = widen(a);
  const places = big.n.decimalPlaces();
  const n = BigInt(big.n.times(powerOfTen(places)).toFixed());
  const d = BigInt(big.d.toFixed()) * 10n ** BigInt(places);
  return reduced(n, d);
}

function reduced(n: bigint, d: bigint): LowestTerms {
  const common = greatestCommonDivisor(n < 0n ? -n : n, d);
  return { n: n / common, d: d / common };
}

/** `a / b` in lowest terms. */
export function quotientOfTerms(a: LowestTerms, b: LowestTerms): LowestTerms {
  return reduced(a.n * b.d, a.d * b.n);
}

/** True where the decimal expansion of 1 / d ends. */
export function isTerminating(d: bigint): boolean {
  let rest = d;
  while (rest % 2n === 0n) rest /= 2n;
  while (rest % 5n === 0n) rest /= 5n;
  return rest === 1n;
}

function greatestCommonDivisor(a: bigint, b: bigint): bigint {
  let [high, low] = [a, b];
  while (low !== 0n) [high, low] = [low, high % low];
  return high === 0n ? 1n : high;
}
