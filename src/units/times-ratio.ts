import type { Dimension } from './catalogue.js';
import type { Decimal } from './decimal.js';
import { exactOf, fromSI, type Quantity } from './quantity.js';
import {
  addRatios,
  divideRatios,
  exactDecimal,
  multiplyRatios,
  ONE_RATIO,
  type Ratio,
} from './ratio.js';

/** `q r`, exactly. Internal. */
export const timesRatio = <D extends Dimension>(quantity: Quantity<D>, by: Ratio): Quantity<D> =>
  fromSI(quantity.dimension, multiplyRatios(exactOf(quantity), by));

/** `q / r`, exactly; r is not zero. Internal. */
export const overRatio = <D extends Dimension>(quantity: Quantity<D>, by: Ratio): Quantity<D> =>
  fromSI(quantity.dimension, divideRatios(exactOf(quantity), by));

/** `a / b` as a factor, exactly; b is not zero. Internal. */
export const shareOf = <D extends Dimension>(a: Quantity<D>, b: Quantity<D>): Decimal =>
  exactDecimal(divideRatios(exactOf(a), exactOf(b)));

/** `1 + r`: a quantity with its allowance. Internal. */
export const onePlus = (fraction: Ratio): Ratio => addRatios(ONE_RATIO, fraction);
