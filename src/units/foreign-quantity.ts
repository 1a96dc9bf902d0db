import { fault } from '../errors.js';
import { entryOf } from './find-unit.js';
import type { AnyQuantity } from './quantity-types.js';
import { multiplyRatios, type Ratio } from './ratio.js';
import { readWritten } from './read-number.js';

/** The value of a quantity from another copy of the package: its JSON carries every digit. Internal. */
export function foreignExact(quantity: AnyQuantity): Ratio {
  const { value, unit } = foreignJSON(quantity);
  if (typeof value !== 'string') throw notAQuantity();
  return multiplyRatios(readWritten(value), entryOf(quantity.dimension, unit).exact);
}

function foreignJSON(quantity: AnyQuantity): Readonly<Record<'value' | 'unit', unknown>> {
  let json: unknown = null;
  try {
    json = quantity.toJSON();
  } catch {
    // what cannot be written is nothing that could be read
  }
  if (typeof json !== 'object' || json === null) throw notAQuantity();
  return json as Readonly<Record<'value' | 'unit', unknown>>;
}

const notAQuantity = () =>
  fault('WRONG_TYPE', 'expected a quantity, got an object that only looks like one');
