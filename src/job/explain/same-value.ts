import { isQuantity, type Length } from '../../units/quantity.js';
import type { StepItem, StepValue } from '../../working.js';

/** True for one and the same value, to the last digit. Internal. */
export function isSame(a: StepItem, b: unknown): boolean {
  if (!isQuantity(a)) return a === b;
  return isQuantity(b) && a.dimension === b.dimension && (a as Length).equals(b as Length);
}

/** The values of a list, or the one value. Internal. */
export const itemsOf = (value: StepValue): readonly StepItem[] => (isList(value) ? value : [value]);

const isList = (value: StepValue): value is readonly StepItem[] => Array.isArray(value);
