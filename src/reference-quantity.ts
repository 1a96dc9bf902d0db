import type { ReferenceValue } from './sources/reference-value.js';
import type { Dimension, UnitOf } from './units/catalogue.js';
import { toQuantity } from './units/construct.js';
import type { Quantity } from './units/quantity.js';

/** A published figure as a quantity, exactly as printed. Internal. */
export function referenceQuantity<D extends Dimension>(
  dimension: D,
  { value, unit }: ReferenceValue,
): Quantity<D> {
  // the unit is in the catalogue; reading checks that it has this dimension
  return toQuantity(dimension, { value, unit: unit as UnitOf<D> });
}
