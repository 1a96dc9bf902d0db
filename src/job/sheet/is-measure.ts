import type { Dimension } from '../../units/catalogue.js';
import {
  exactOf,
  isQuantity,
  type AnyQuantity,
  type Length,
  type Quantity,
} from '../../units/quantity.js';

/** True for a quantity that can be read, not only for what bears its mark. Internal. */
export function isSound(value: unknown): value is AnyQuantity {
  if (!isQuantity(value) || !('abs' in value)) return false;
  try {
    exactOf(value);
    return true;
  } catch {
    return false;
  }
}

/** True for a quantity of a dimension. */
const isMeasure = <D extends Dimension>(value: unknown, dimension: D): value is Quantity<D> =>
  isSound(value) && value.dimension === dimension;

/** True for a length. Internal. */
export const isLength = (value: unknown): value is Length => isMeasure(value, 'length');
