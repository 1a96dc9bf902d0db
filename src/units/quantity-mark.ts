import { SI_UNIT } from './catalogue.js';
import type { AnyQuantity } from './quantity-types.js';

/** The mark on the quantities of every copy of the package. Internal. */
export const QUANTITY_MARK = Symbol.for('settline.quantity');
/** The mark on this copy's own quantities, which need no second check. Internal. */
export const OWN_MARK = Symbol('settline.own');

/**
 * True for a quantity of any dimension, also from another copy of the package.
 *
 * @example
 * isQuantity(length('1 in')) //=> true
 * isQuantity('1 in') //=> false
 */
export function isQuantity(value: unknown): value is AnyQuantity {
  if (typeof value !== 'object' || value === null) return false;
  try {
    return OWN_MARK in value || (QUANTITY_MARK in value && looksLikeQuantity(value));
  } catch {
    // an object that throws when it is inspected
    return false;
  }
}

/** Any object can carry the mark, so its fields are checked as well. */
function looksLikeQuantity(value: object): boolean {
  const { dimension, toJSON } = value as Partial<Record<'dimension' | 'toJSON', unknown>>;
  return (
    typeof dimension === 'string' &&
    Object.hasOwn(SI_UNIT, dimension) &&
    typeof toJSON === 'function'
  );
}
