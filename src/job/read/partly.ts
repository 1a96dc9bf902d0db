import type { Outline } from '../../outline/ring.js';
import type { Decimal } from '../../units/decimal.js';
import type { AnyQuantity } from '../../units/quantity.js';

/** Values that are read as a whole or not at all. */
type Whole = AnyQuantity | Decimal | Outline | string | number | boolean | null;

/** The readable parts of a value; the others are undefined. Internal. */
export type Partly<T> = T extends Whole
  ? T
  : T extends readonly (infer E)[]
    ? readonly (Partly<E> | undefined)[]
    : { readonly [K in keyof T]?: Partly<T[K]> | undefined };
