import { object, optional, quantity } from '../input/field.js';
import type { QuantityRange } from '../input/ranges.js';
import { isLeftOut, shapeOf, type Check, type Field } from '../input/shape.js';
import type { Dimension } from '../units/catalogue.js';
import type { QuantityInput } from '../units/construct.js';
import type { Quantity } from '../units/quantity.js';

/** A minimum and a maximum. A value on one of them passes. */
export interface Limits<Least, Most = Least> {
  /** Minimum; null if there is none. */
  readonly minimum: Least;
  /** Maximum; null if there is none. */
  readonly maximum: Most;
}

/** Your own minimum, maximum or both. */
export interface BetweenInput<D extends Dimension = 'length'> {
  /** Minimum. Default: none. */
  readonly minimum?: QuantityInput<D>;
  /** Maximum. Default: none. */
  readonly maximum?: QuantityInput<D>;
}

/** A minimum, a maximum or both, within a range. Internal. */
export function betweenField<D extends Dimension>(
  range: QuantityRange<D>,
): Field<Limits<Quantity<D> | undefined>> {
  const limit = optional(quantity(range));
  const shape = shapeOf<Limits<Quantity<D> | undefined>>()({ minimum: limit, maximum: limit });
  const check: Check<typeof shape> = (reader, values, path) => {
    const { minimum, maximum } = values;
    if (isLeftOut(values, 'minimum') && isLeftOut(values, 'maximum')) {
      reader.fail('REQUIRED', path, 'missing. Give minimum, maximum or both');
    } else if (minimum !== undefined && maximum !== undefined && minimum.compare(maximum) > 0) {
      reader.fail('LIMITS_CONTRADICT', path, 'minimum is more than maximum. Swap them');
    }
  };
  return object(shape, check);
}

/** Margin of a value to its nearer limit; negative out of limits. Internal. */
export function marginOf<D extends Dimension>(
  value: Quantity<D>,
  { minimum, maximum }: Limits<Quantity<D> | null>,
): Quantity<D> {
  const above = minimum === null ? undefined : value.minus(minimum);
  const below = maximum === null ? undefined : maximum.minus(value);
  if (above === undefined || below === undefined) return above ?? below ?? value.minus(value);
  return above.compare(below) < 0 ? above : below;
}
