import { Decimal as DecimalJs } from 'decimal.js';

/** An immutable decimal number of `decimal.js`. */
export type Decimal = DecimalJs;

const PLAIN_NOTATION = { toExpNeg: -9e15, toExpPos: 9e15 };

/**
 * Decimals handed to callers: 40 significant digits, ties to even. A constructor of our own, so that
 * no setting of an app's global `Decimal` can reach the ledger, nor ours the app.
 */
export const Decimal40 = DecimalJs.clone({
  ...PLAIN_NOTATION,
  precision: 40,
  rounding: DecimalJs.ROUND_HALF_EVEN,
});

/**
 * Decimals inside quantities: wide enough that sums and products of field values never round.
 * Only terminating divisions are done with it.
 */
export const Wide = DecimalJs.clone({
  ...PLAIN_NOTATION,
  precision: 250,
  rounding: DecimalJs.ROUND_HALF_EVEN,
});

const powers: Decimal[] = [];

/** Ten to a power that is not negative, as a decimal. */
export function powerOfTen(exponent: number): Decimal {
  return (powers[exponent] ??= new Wide(`1e${exponent}`));
}

export const ZERO = new Wide(0);
export const ONE = new Wide(1);

/** True for a decimal of any copy or clone of `decimal.js`. */
export function isDecimal(value: unknown): value is Decimal {
  return DecimalJs.isDecimal(value);
}
