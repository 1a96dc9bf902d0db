import type { FieldPath } from '../errors.js';
import { custom, quantity } from '../input/field.js';
import { isForm } from '../input/plain.js';
import type { QuantityRange } from '../input/ranges.js';
import type { Reader } from '../input/reader.js';
import type { Field } from '../input/shape.js';
import type { Dimension } from '../units/catalogue.js';
import type { Quantity } from '../units/quantity.js';

/**
 * A quantity, or an object with options: `'12 m'` or `{ length: '12 m', ... }`. An object with
 * `value` or `unit` is a quantity. Internal.
 */
export const quantityOr = <D extends Dimension, T>(
  range: QuantityRange<D>,
  more: Field<T>,
  alone: (quantity: Quantity<D>) => T,
): Field<T> =>
  custom((reader: Reader, value: unknown, path: FieldPath) => {
    return isForm(value)
      ? more.read(reader, value, path)
      : alone(quantity(range).read(reader, value, path));
  });
