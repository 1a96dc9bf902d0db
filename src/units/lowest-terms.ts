import { termsOf, type Ratio } from './big-ratio.js';
import { commonDivisor, sizeOf } from './whole.js';

/** A rational in lowest terms. Internal. */
export interface LowestTerms {
  /** The upper number, of either sign. */
  readonly n: bigint;
  /** The lower number, more than 0. */
  readonly d: bigint;
}

/** The value in lowest terms as two whole numbers. Internal. */
export const lowestTerms = (a: Ratio): LowestTerms => {
  const { n, d } = termsOf(a);
  return { n, d };
};

/** `a / b` in lowest terms; b is more than zero. Internal. */
export function quotientOfTerms(a: LowestTerms, b: LowestTerms): LowestTerms {
  const n = a.n * b.d;
  const d = a.d * b.n;
  const common = commonDivisor(d, sizeOf(n));
  return { n: n / common, d: d / common };
}
