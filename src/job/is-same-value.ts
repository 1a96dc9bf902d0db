import { isQuantity } from '../units/quantity.js';
import { isNear } from './near.js';

/** True where two values differ by no more than float noise. Internal. */
export function isSameValue(a: unknown, b: unknown): boolean {
  if (isQuantity(a) && isQuantity(b)) {
    return a.dimension === b.dimension && isNear(a.si.toNumber(), b.si.toNumber());
  }
  if (typeof a === 'number' && typeof b === 'number') return isNear(a, b);
  if (!isPart(a) || !isPart(b)) return a === b;
  const keys = Object.keys(a);
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => Object.hasOwn(b, key) && isSameValue(a[key], b[key]))
  );
}

/** True for a part of a plan that has fields or entries. Internal. */
export const isPart = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !isQuantity(value);
