import { Decimal as DecimalJs } from 'decimal.js';

/** An immutable decimal number of `decimal.js`. */
export type Decimal = DecimalJs;

const PLAIN_NOTATION = { toExpNeg: -9e15, toExpPos: 9e15 };

/**
 * Decimals in results: 40 significant digits, ties to even. Our own constructor keeps the settings
 * of an app's `Decimal` out of the ledger, and ours out of the app.
 */
export const Decimal40 = DecimalJs.clone({
  ...PLAIN_NOTATION,
  precision: 40,
  rounding: DecimalJs.ROUND_HALF_EVEN,
});

/** Decimals wide enough for sums and products of field values without rounding. */
const Wide = DecimalJs.clone({
  ...PLAIN_NOTATION,
  precision: 250,
  rounding: DecimalJs.ROUND_HALF_EVEN,
});

export const ZERO = new Wide(0);
export const ONE = new Wide(1);

/** True for a decimal of any copy or clone of `decimal.js`. */
export function isDecimal(value: unknown): value is Decimal {
  return DecimalJs.isDecimal(value);
}
