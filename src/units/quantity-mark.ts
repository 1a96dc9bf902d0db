import { SI_UNIT } from './catalogue.js';
import type { AnyQuantity } from './quantity-types.js';

/** What every copy of the package marks its quantities with. Internal. */
export const QUANTITY_MARK = Symbol.for('settline.quantity');
/** What this copy marks its own with, so that they need not be looked at twice. Internal. */
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
    // an object that does not let itself be looked at
    return false;
  }
}

/** Anybody can set the mark: what bears it must look the part as well. */
function looksLikeQuantity(value: object): boolean {
  const { dimension, toJSON } = value as Partial<Record<'dimension' | 'toJSON', unknown>>;
  return (
    typeof dimension === 'string' &&
    Object.hasOwn(SI_UNIT, dimension) &&
    typeof toJSON === 'function'
  );
}
