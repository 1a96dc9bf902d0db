import { Decimal as DecimalJs } from 'decimal.js';
import { fault } from '../errors.js';

/** An immutable decimal number of `decimal.js`. */
export type Decimal = DecimalJs;

const PLAIN_NOTATION = { toExpNeg: -9e15, toExpPos: 9e15 };

/**
 * Decimals in results: 40 significant digits, ties to even. Our own constructor keeps the settings
 * of an app's `Decimal` out of the ledger, and ours out of the app.
 */
export const Decimal40 = withOwnFaults(
  DecimalJs.clone({
    ...PLAIN_NOTATION,
    precision: 40,
    rounding: DecimalJs.ROUND_HALF_EVEN,
  }),
);

/**
 * Gives the decimals of a constructor a prototype of their own, whose methods refuse a number of digits
 * as the rest of the library does. The prototype of the package is shared with the app and stays.
 */
function withOwnFaults(make: typeof DecimalJs): typeof DecimalJs {
  const shared = DecimalJs.prototype;
  const own = Object.create(shared) as Record<string, unknown>;
  for (const name of ['toFixed', 'toDecimalPlaces', 'toDP', 'toExponential'] as const) {
    own[name] = strict(shared[name] as Method, 'decimal places');
  }
  for (const name of ['toPrecision', 'toSignificantDigits', 'toSD'] as const) {
    own[name] = strict(shared[name] as Method, 'digits');
  }
  Object.defineProperty(make, 'prototype', { value: own });
  return make;
}

type Method = (this: DecimalJs, ...given: unknown[]) => unknown;

function strict(method: Method, what: string): Method {
  return function counted(...given) {
    try {
      return method.apply(this, given);
    } catch {
      throw fault('OUT_OF_RANGE', refusal(given, what));
    }
  };
}

function refusal([count, rounding]: readonly unknown[], what: string): string {
  const isCount = count === undefined || (Number.isInteger(count) && Number(count) >= 1);
  if (isCount && rounding !== undefined) {
    return `${textOf(rounding)} is not a rounding of decimal.js. Leave it out`;
  }
  return `${textOf(count)} ${what} are not possible. Write a whole number`;
}

const textOf = (value: unknown): string =>
  typeof value === 'number' || typeof value === 'string' ? `${value}` : typeof value;

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
