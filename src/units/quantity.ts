import { fault } from '../errors.js';
import { SI_UNIT, type Dimension, type UnitOf } from './catalogue.js';
import { isDecimal, Wide, type Decimal } from './decimal.js';
import {
  combined,
  PRODUCTS,
  QUOTIENTS,
  type Divisor,
  type Factor,
  type Product,
  type Quotient,
} from './dimension.js';
import { entryOf } from './find-unit.js';
import { quantityJSON, type QuantityJSON } from './quantity-json.js';
import {
  addRatios,
  compareRatios,
  divideRatios,
  isSmall,
  multiplyRatios,
  negateRatio,
  quotientToDecimal,
  quotientToNumber,
  ratio,
  ratioToDecimal,
  settleRatio,
  signOfRatio,
  type Ratio,
} from './ratio.js';
import { readNumber, type NumberInput } from './read-number.js';
import type { SmallDecimal } from './small-decimal.js';

/** What quantities of every dimension have in common. */
export interface AnyQuantity {
  readonly dimension: Dimension;
  readonly si: Decimal;
  isZero(): boolean;
  isNegative(): boolean;
  toJSON(): QuantityJSON;
  toString(): string;
}

/**
 * An immutable amount of one dimension, exact: sums, products and conversions never round, because
 * the value is kept as a ratio of two decimals. Rounding happens where a decimal is read out
 * (40 digits) or printed.
 */
export interface Quantity<D extends Dimension> extends AnyQuantity {
  readonly dimension: D;
  /** The value in SI units (m, m2, m3, kg, kg/m3, N, N/m, Pa, ratio, rad, s, m/s, m3/s), to 40 digits. */
  readonly si: Decimal;
  /** The value in a unit of the same dimension, to 40 digits; exact where it ends within them. */
  to(unit: UnitOf<D>): Decimal;
  /** The value in a unit as a float: the border to bulk geometry. */
  toNumber(unit: UnitOf<D>): number;
  plus(other: Quantity<D>): Quantity<D>;
  minus(other: Quantity<D>): Quantity<D>;
  negated(): Quantity<D>;
  abs(): Quantity<D>;
  times(factor: NumberInput): Quantity<D>;
  times<E extends Factor<D>>(factor: Quantity<E>): Quantity<Product<D, E>>;
  dividedBy(divisor: NumberInput): Quantity<D>;
  dividedBy(divisor: Quantity<D>): Decimal;
  dividedBy<E extends Divisor<D>>(divisor: Quantity<E>): Quantity<Quotient<D, E>>;
  compare(other: Quantity<D>): -1 | 0 | 1;
  equals(other: Quantity<D>): boolean;
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

const BRAND = Symbol.for('settline.quantity');

class ExactQuantity<D extends Dimension> implements Quantity<D> {
  readonly dimension: D;
  /** The value in SI units, for deep comparisons: as two floats, or as a decimal of 40 digits. */
  readonly digits: SmallDecimal | Decimal;
  readonly #exact: Ratio;
  #si: Decimal | undefined;

  constructor(dimension: D, exact: Ratio) {
    const decimal = isSmall(exact) ? undefined : ratioToDecimal(exact);
    const settled = decimal === undefined ? exact : settleRatio(exact, decimal);
    this.dimension = dimension;
    this.digits = isSmall(settled) ? Object.freeze(settled) : (decimal ?? ratioToDecimal(settled));
    this.#exact = settled;
    Object.freeze(this);
  }

  get [BRAND](): boolean {
    return #exact in this;
  }

  static exactOf(quantity: AnyQuantity): Ratio {
    if (#exact in quantity) return quantity.#exact;
    // a quantity from another copy of the package: its JSON carries every digit
    const { value, unit } = quantity.toJSON();
    return multiplyRatios(readNumber(value), entryOf(quantity.dimension, unit).exact);
  }

  get si(): Decimal {
    if (!('n' in this.digits)) return this.digits;
    return (this.#si ??= ratioToDecimal(this.digits));
  }

  to(unit: UnitOf<D>): Decimal {
    return quotientToDecimal(this.#exact, entryOf(this.dimension, unit).exact);
  }

  toNumber(unit: UnitOf<D>): number {
    const value = quotientToNumber(this.#exact, entryOf(this.dimension, unit).exact);
    if (!Number.isFinite(value)) throw fault('OUT_OF_RANGE', 'too large for a float');
    return value;
  }

  plus(other: Quantity<D>): Quantity<D> {
    return new ExactQuantity(this.dimension, addRatios(this.#exact, this.#sameKind(other)));
  }

  minus(other: Quantity<D>): Quantity<D> {
    const subtrahend = negateRatio(this.#sameKind(other));
    return new ExactQuantity(this.dimension, addRatios(this.#exact, subtrahend));
  }

  negated(): Quantity<D> {
    return new ExactQuantity(this.dimension, negateRatio(this.#exact));
  }

  abs(): Quantity<D> {
    return this.isNegative() ? this.negated() : this;
  }

  times(factor: NumberInput): Quantity<D>;
  times<E extends Factor<D>>(factor: Quantity<E>): Quantity<Product<D, E>>;
  times(factor: NumberInput | AnyQuantity): AnyQuantity {
    if (!isQuantity(factor)) {
      return new ExactQuantity(this.dimension, multiplyRatios(this.#exact, readNumber(factor)));
    }
    const dimension = combined(PRODUCTS, this.dimension, factor.dimension);
    if (dimension === undefined) throw noProduct(this.dimension, 'times', factor.dimension);
    return new ExactQuantity(dimension, multiplyRatios(this.#exact, exactOf(factor)));
  }

  dividedBy(divisor: NumberInput): Quantity<D>;
  dividedBy(divisor: Quantity<D>): Decimal;
  dividedBy<E extends Divisor<D>>(divisor: Quantity<E>): Quantity<Quotient<D, E>>;
  dividedBy(divisor: NumberInput | AnyQuantity): AnyQuantity | Decimal {
    const by = isQuantity(divisor) ? exactOf(divisor) : readNumber(divisor);
    if (signOfRatio(by) === 0) throw fault('DIVISION_BY_ZERO', `${this.dimension} divided by zero`);
    const quotient = divideRatios(this.#exact, by);
    if (!isQuantity(divisor)) return new ExactQuantity(this.dimension, quotient);
    if (divisor.dimension === this.dimension) return ratioToDecimal(quotient);
    const dimension = combined(QUOTIENTS, this.dimension, divisor.dimension);
    if (dimension === undefined) throw noProduct(this.dimension, 'divided by', divisor.dimension);
    return new ExactQuantity(dimension, quotient);
  }

  compare(other: Quantity<D>): -1 | 0 | 1 {
    return compareRatios(this.#exact, this.#sameKind(other));
  }

  equals(other: Quantity<D>): boolean {
    return this.compare(other) === 0;
  }

  isZero(): boolean {
    return signOfRatio(this.#exact) === 0;
  }

  isNegative(): boolean {
    return signOfRatio(this.#exact) < 0;
  }

  toJSON(): QuantityJSON {
    return quantityJSON(this.dimension, this.#exact);
  }

  toString(): string {
    return `${this.si.toString()} ${SI_UNIT[this.dimension]}`;
  }

  [Symbol.for('nodejs.util.inspect.custom')](): string {
    return `${this.dimension}(${this.toString()})`;
  }

  #sameKind(other: Quantity<D>): Ratio {
    if (!isQuantity(other) || other.dimension !== this.dimension) {
      const got = isQuantity(other) ? other.dimension : typeof other;
      throw fault('DIMENSION_MISMATCH', `expected a ${this.dimension}, got ${got}`, {
        expected: this.dimension,
        got,
      });
    }
    return exactOf(other);
  }
}

/**
 * True for a quantity of any dimension, also from another copy of the package.
 *
 * @example
 * isQuantity(length('1 in')) //=> true
 * isQuantity('1 in') //=> false
 */
export function isQuantity(value: unknown): value is AnyQuantity {
  // the mark alone makes no quantity: one from another copy of the package has its JSON
  return typeof value === 'object' && value !== null && BRAND in value && 'toJSON' in value;
}

/** The exact ratio inside a quantity. Internal. */
export function exactOf(quantity: AnyQuantity): Ratio {
  return ExactQuantity.exactOf(quantity);
}

/** Makes a quantity from an exact value in SI units. Internal. */
export function fromSI<D extends Dimension>(dimension: D, exact: Ratio): Quantity<D> {
  return new ExactQuantity(dimension, exact);
}

/** Makes a quantity from an exact value in SI units. Internal. */
export function fromSIDecimal<D extends Dimension>(dimension: D, si: Decimal): Quantity<D> {
  return new ExactQuantity(dimension, ratio(new Wide(si)));
}

/** Makes a quantity from an exact value in a unit. Internal. */
export function fromUnit<D extends Dimension>(
  dimension: D,
  value: Ratio,
  unit: UnitOf<D>,
): Quantity<D> {
  return new ExactQuantity(dimension, multiplyRatios(value, entryOf(dimension, unit).exact));
}

function noProduct(first: Dimension, verb: string, second: Dimension) {
  return fault('NO_KNOWN_PRODUCT', `${first} ${verb} ${second} is no quantity of the catalogue`, {
    first,
    second,
  });
}

/** True for what {@link Quantity.times} takes as a plain number. */
export function isNumberInput(value: unknown): value is NumberInput {
  return typeof value === 'number' || typeof value === 'string' || isDecimal(value);
}
