import type { Dimension, LengthUnit, UnitOf } from './catalogue.js';
import type { Decimal } from './decimal.js';
import type { Divisor, Factor, Product, Quotient } from './dimension.js';

/** A number without a unit: a number, digits as text (`'0.05'`, `'1/3'`) or a decimal. */
export type NumberInput = number | string | Decimal;

/** The printed forms of a length: feet and inches, or one unit. */
export type LengthForm = 'ft-in' | LengthUnit;

/** A quantity as JSON: the exact digits (or `'a/b'` if they end in no unit) and the unit. */
export interface QuantityJSON {
  /** All digits, such as `'0.0254'`, or a fraction of whole numbers, such as `'127/15000'`. */
  readonly value: string;
  /** A unit symbol of the catalogue. */
  readonly unit: string;
}

/**
 * A quantity after `structuredClone`, `postMessage` or browser storage. `fromJSON` restores it, and
 * every input accepts it.
 */
export interface QuantityClone<U extends string = string> {
  /** The exact value: a number whose digits are all of it, or the digits or a fraction as text. */
  readonly value: number | string;
  /** A unit symbol of the catalogue: the SI unit of the dimension, as a clone has it. */
  readonly unit: U;
}

/** Fields common to quantities of every dimension. */
export interface AnyQuantity {
  /** The kind of quantity: `'length'`, `'area'` ... */
  readonly dimension: Dimension;
  /** The value in SI units (m, m2, m3, kg, kg/m3, N, N/m, Pa, ratio, rad, s, m/s, m3/s), to 40 digits. */
  readonly si: Decimal;
  /** True for 0. */
  isZero(): boolean;
  /** True for less than 0. */
  isNegative(): boolean;
  /** The exact value and its unit as text; `fromJSON` restores it. */
  toJSON(): QuantityJSON;
  /**
   * The value and its unit as text, to 40 digits, as a template string shows it. It uses the unit
   * that the quantity was written in, so equal quantities may print differently. A slope is in
   * percent, an angle in degrees, and a value calculated from other dimensions in the SI unit.
   */
  toString(): string;
  /** Text for a template string. Use as a number (`<`, `>`, `+`, `*`) is refused. */
  [Symbol.toPrimitive](hint: 'string' | 'number' | 'default'): string;
}

/**
 *
 * An immutable, exact amount of one dimension. The value is a ratio of two whole numbers, so sums,
 * products and conversions never round. Rounding happens when you read a decimal out (40 digits) or
 * print.
 *
 * Compare by `compare`, `equals`, `lessThan`, `greaterThan`, `atLeast` and `atMost`, and sort with
 * `compareQuantities`: `<`, `>`, `+` and `*` are refused with `OPERATOR_ON_QUANTITY`, because they
 * would compare text. Deep comparisons and clones see only the exact value.
 *
 * Wherever a method takes a number, `'1/3'` is exactly a third; a float means its shortest digits.
 * A quantity of another dimension is refused with `DIMENSION_MISMATCH`, at compile time too.
 */
export interface Quantity<D extends Dimension> extends AnyQuantity {
  /** The kind of quantity: `'length'`, `'area'` ... */
  readonly dimension: D;
  /** The value in SI units (m, m2, m3, kg, kg/m3, N, N/m, Pa, ratio, rad, s, m/s, m3/s), to 40 digits. */
  readonly si: Decimal;
  /**
   * The value in a unit of the same dimension, to 40 digits; exact if it ends within them. A decimal has
   * the methods of `decimal.js` and their errors: `toFixed(-1)` throws one. `formatQuantity` refuses such
   * places with a code.
   */
  to(unit: UnitOf<D>): Decimal;
  /** The value in a unit as the nearest float, for bulk geometry. */
  toNumber(unit: UnitOf<D>): number;
  /** The sum of this and another quantity. */
  plus(other: Quantity<D>): Quantity<D>;
  /** This quantity less another one. */
  minus(other: Quantity<D>): Quantity<D>;
  /** The amount with the opposite sign. */
  negated(): Quantity<D>;
  /** The amount without its sign. */
  abs(): Quantity<D>;
  /** This quantity times a number. */
  times(factor: NumberInput): Quantity<D>;
  /** The product of two quantities, such as length x length = area. */
  times<E extends Factor<D>>(factor: Quantity<E>): Quantity<Product<D, E>>;
  /** This quantity divided by a number. */
  dividedBy(divisor: NumberInput): Quantity<D>;
  /** This quantity over another one of the same dimension, to 40 digits. */
  dividedBy(divisor: Quantity<D>): Decimal;
  /** The quotient of two quantities, such as volume / area = length. */
  dividedBy<E extends Divisor<D>>(divisor: Quantity<E>): Quantity<Quotient<D, E>>;
  /** -1 if this is less than the other, 0 if they are equal, 1 if it is more. */
  compare(other: Quantity<D>): -1 | 0 | 1;
  /** True if both are exactly the same amount, in whatever units they were written. */
  equals(other: Quantity<D>): boolean;
  /** True if this is less than the other. */
  lessThan(other: Quantity<D>): boolean;
  /** True if this is more than the other. */
  greaterThan(other: Quantity<D>): boolean;
  /** True if this is the other or more. */
  atLeast(other: Quantity<D>): boolean;
  /** True if this is the other or less. */
  atMost(other: Quantity<D>): boolean;
}

/** An exact length. */
export type Length = Quantity<'length'>;
/** An exact area. */
export type Area = Quantity<'area'>;
/** An exact volume. */
export type Volume = Quantity<'volume'>;
/** An exact mass. */
export type Mass = Quantity<'mass'>;
/** An exact density: mass over volume. */
export type Density = Quantity<'density'>;
/** An exact force. */
export type Force = Quantity<'force'>;
/** An exact weight of a line per length: force over length. */
export type LineWeight = Quantity<'line-weight'>;
/** An exact pressure: force over area. */
export type Pressure = Quantity<'pressure'>;
/** An exact slope: rise over run. */
export type Slope = Quantity<'slope'>;
/** An exact angle. */
export type Angle = Quantity<'angle'>;
/** An exact length of time. */
export type Time = Quantity<'time'>;
/** An exact speed: length over time. */
export type Speed = Quantity<'speed'>;
/** An exact flow: volume over time. */
export type Flow = Quantity<'flow'>;
