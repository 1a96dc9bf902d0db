import { fault, type FieldPath } from '../errors.js';
import { isSmall, ONE_RATIO, type Ratio } from '../units/ratio.js';
import { roundQuotient } from '../units/round-ratio.js';

/**
 * The smallest whole number not below `a / b`, exactly; too many is a fault at `path`. Internal.
 */
export const wholeUp = (a: Ratio, b: Ratio = ONE_RATIO, path: FieldPath = []): number =>
  counted(roundQuotient(a, b, 'up'), path);

/** The largest whole number not above `a / b`, exactly; a is not negative. Internal. */
export const wholeDown = (a: Ratio, b: Ratio = ONE_RATIO, path: FieldPath = []): number =>
  counted(roundQuotient(a, b, 'down'), path);

const counted = (count: Ratio, path: FieldPath): number =>
  countOf(isSmall(count) ? count.n : Infinity, path);

/** A sum or product of counts, if floats can still count it. Internal. */
export function countOf(count: number, path: FieldPath = []): number {
  if (Number.isSafeInteger(count)) return count;
  throw fault(
    'CAPACITY_EXCEEDED',
    'more pieces than can be counted. Check the digits and the unit',
    {},
    path,
  );
}
