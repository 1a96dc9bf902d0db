import { attempt } from '../attempt.js';
import type { FieldPath } from '../errors.js';
import type { NumberRule, Reader } from '../input/reader.js';
import type { Dimension } from '../units/catalogue.js';
import { exactOf, fromSI, type Quantity } from '../units/quantity.js';
import {
  addRatios,
  decimalRatio,
  divideRatios,
  multiplyRatios,
  ONE_RATIO,
  type Ratio,
} from '../units/ratio.js';
import { readNumber, type NumberInput } from '../units/read-number.js';

/**
 * Reads a number and keeps all of it: a third given as text (`'1/3'`) stays a third, where a decimal
 * would end after 40 digits and could turn a tie. Internal.
 */
export function readRatio(
  reader: Reader,
  value: unknown,
  path: FieldPath,
  rule: NumberRule,
): Ratio {
  const decimal = reader.number(value, path, rule);
  const all = attempt(() => readNumber(value as NumberInput));
  return all.ok ? all.value : decimalRatio(decimal);
}

/** `q r`, exactly. Internal. */
export const timesRatio = <D extends Dimension>(quantity: Quantity<D>, by: Ratio): Quantity<D> =>
  fromSI(quantity.dimension, multiplyRatios(exactOf(quantity), by));

/** `q / r`, exactly; r is not zero. Internal. */
export const overRatio = <D extends Dimension>(quantity: Quantity<D>, by: Ratio): Quantity<D> =>
  fromSI(quantity.dimension, divideRatios(exactOf(quantity), by));

/** `1 + r`: a whole and its allowance. Internal. */
export const onePlus = (fraction: Ratio): Ratio => addRatios(ONE_RATIO, fraction);
