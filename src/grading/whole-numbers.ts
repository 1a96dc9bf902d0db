import { entry, lastOf } from '../invariant.js';
import { fractionOf, type Ratio } from '../units/big-ratio.js';
import { lowestTerms, quotientOfTerms } from '../units/lowest-terms.js';

/** Values as whole numbers over one common divisor. Internal. */
export interface WholeNumbers {
  readonly whole: readonly bigint[];
  readonly scale: bigint;
}

/**
 * Brings exact values to one common divisor, `value(i) = whole(i) / scale`, so thirds of an inch
 * and survey feet add up without their divisors growing at every sum. Internal.
 */
export function inWholeNumbers(values: readonly Ratio[]): WholeNumbers {
  const terms = values.map(lowestTerms);
  let scale = 1n;
  for (const { d } of terms) scale *= quotientOfTerms(one(scale), one(d)).d;
  return { whole: terms.map(({ n, d }) => n * (scale / d)), scale };
}

const one = (n: bigint) => ({ n, d: 1n });

/** `n / d` as an exact ratio; d is not zero. Internal. */
export const ratioOfWhole = (n: bigint, d: bigint): Ratio => fractionOf(n, d);

/**
 * Solves `a x = b` in whole numbers, without fractions on the way: `x(i) = whole(i) / scale`.
 * Undefined if the equations do not decide. Internal.
 */
export function solveWhole(
  a: readonly (readonly bigint[])[],
  b: readonly bigint[],
): WholeNumbers | undefined {
  const rows = a.map((row, i) => [...row, entry(b, i)]);
  let last = 1n;
  for (let k = 0; k < rows.length; k += 1) {
    const found = rows.findIndex((row, i) => i >= k && row[k] !== 0n);
    const [pivot, other] = [rows[found], rows[k]];
    if (pivot === undefined || other === undefined) return undefined;
    rows[found] = other.map((value) => -value);
    rows[k] = pivot;
    const head = entry(pivot, k);
    rows.forEach((row, i) => {
      if (i === k) return;
      const lead = entry(row, k);
      rows[i] = row.map((value, j) => (value * head - lead * entry(pivot, j)) / last);
    });
    last = head;
  }
  return { whole: rows.map((row) => lastOf(row)), scale: last };
}
