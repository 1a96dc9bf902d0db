import { fault } from '../errors.js';
import { SI_UNIT, type Dimension, type UnitOf } from './catalogue.js';
import { isDecimal, type Decimal } from './decimal.js';
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
import { foreignExact } from './foreign-quantity.js';
import { fullText, shortText, type WrittenAs } from './print-quantity.js';
import { plainValue, quantityJSON } from './quantity-json.js';
import { isQuantity, OWN_MARK, QUANTITY_MARK } from './quantity-mark.js';
import type {
  AnyQuantity,
  LengthForm,
  NumberInput,
  Quantity,
  QuantityJSON,
} from './quantity-types.js';
import {
  addRatios,
  compareRatios,
  decimalRatio,
  divideRatios,
  multiplyRatios,
  negateRatio,
  quotientToDecimal,
  quotientToNumber,
  ratioToDecimal,
  signOfRatio,
  subtractRatios,
  type Ratio,
} from './ratio.js';
import { readNumber } from './read-number.js';
import { aOrAn, shown } from './shown.js';

export { isQuantity } from './quantity-mark.js';
export type {
  Angle,
  AnyQuantity,
  Area,
  Density,
  Flow,
  Force,
  Length,
  LineWeight,
  Mass,
  Pressure,
  Quantity,
  Slope,
  Speed,
  Time,
  Volume,
} from './quantity-types.js';

class ExactQuantity<D extends Dimension> implements Quantity<D> {
  // a clone and a deep comparison see the value, not how it was written
  readonly value: number | string;
  readonly unit: string;
  readonly #dimension: D;
  readonly #exact: Ratio;
  readonly #written: WrittenAs | undefined;
  #si: Decimal | undefined;

  constructor(dimension: D, exact: Ratio, written?: WrittenAs) {
    this.value = plainValue(exact);
    this.unit = SI_UNIT[dimension];
    this.#dimension = dimension;
    this.#exact = exact;
    this.#written = written;
    Object.freeze(this);
  }

  get [QUANTITY_MARK](): boolean {
    return #exact in this;
  }

  get [OWN_MARK](): boolean {
    return #exact in this;
  }

  static exactOf(quantity: AnyQuantity): Ratio {
    return #exact in quantity ? quantity.#exact : foreignExact(quantity);
  }

  static own<E extends Dimension>(quantity: AnyQuantity & { readonly dimension: E }): Quantity<E> {
    if (#exact in quantity) return quantity as unknown as Quantity<E>;
    return new ExactQuantity(quantity.dimension, foreignExact(quantity));
  }

  static writtenAs(quantity: AnyQuantity): WrittenAs | undefined {
    return #exact in quantity ? quantity.#written : undefined;
  }

  get dimension(): D {
    return this.#dimension;
  }

  get si(): Decimal {
    return (this.#si ??= ratioToDecimal(this.#exact));
  }

  to(unit: UnitOf<D>): Decimal {
    return quotientToDecimal(this.#exact, entryOf(this.#dimension, unit).exact);
  }

  toNumber(unit: UnitOf<D>): number {
    const value = quotientToNumber(this.#exact, entryOf(this.#dimension, unit).exact);
    if (!Number.isFinite(value)) throw fault('OUT_OF_RANGE', 'too large for a float');
    return value;
  }

  plus(other: Quantity<D>): Quantity<D> {
    const sum = addRatios(this.#exact, this.#sameKind(other));
    return new ExactQuantity(this.#dimension, sum, this.#writtenWith(other));
  }

  minus(other: Quantity<D>): Quantity<D> {
    const difference = subtractRatios(this.#exact, this.#sameKind(other));
    return new ExactQuantity(this.#dimension, difference, this.#writtenWith(other));
  }

  negated(): Quantity<D> {
    return new ExactQuantity(this.#dimension, negateRatio(this.#exact), this.#written);
  }

  abs(): Quantity<D> {
    return this.isNegative() ? this.negated() : this;
  }

  times(factor: NumberInput): Quantity<D>;
  times<E extends Factor<D>>(factor: Quantity<E>): Quantity<Product<D, E>>;
  times(factor: NumberInput | AnyQuantity): AnyQuantity {
    if (!isQuantity(factor)) {
      const product = multiplyRatios(this.#exact, readNumber(factor));
      return new ExactQuantity(this.#dimension, product, this.#written);
    }
    const dimension = combined(PRODUCTS, this.#dimension, factor.dimension);
    if (dimension === undefined) throw noProduct(this.#dimension, 'times', factor.dimension);
    return new ExactQuantity(dimension, multiplyRatios(this.#exact, exactOf(factor)));
  }

  dividedBy(divisor: NumberInput): Quantity<D>;
  dividedBy(divisor: Quantity<D>): Decimal;
  dividedBy<E extends Divisor<D>>(divisor: Quantity<E>): Quantity<Quotient<D, E>>;
  dividedBy(divisor: NumberInput | AnyQuantity): AnyQuantity | Decimal {
    const by = isQuantity(divisor) ? exactOf(divisor) : readNumber(divisor);
    if (signOfRatio(by) === 0) {
      throw fault('DIVISION_BY_ZERO', `${this.#dimension} divided by zero`);
    }
    if (!isQuantity(divisor)) {
      return new ExactQuantity(this.#dimension, divideRatios(this.#exact, by), this.#written);
    }
    if (divisor.dimension === this.#dimension) return quotientToDecimal(this.#exact, by);
    const dimension = combined(QUOTIENTS, this.#dimension, divisor.dimension);
    if (dimension === undefined) throw noProduct(this.#dimension, 'divided by', divisor.dimension);
    return new ExactQuantity(dimension, divideRatios(this.#exact, by));
  }

  compare(other: Quantity<D>): -1 | 0 | 1 {
    return compareRatios(this.#exact, this.#sameKind(other));
  }

  equals(other: Quantity<D>): boolean {
    return this.compare(other) === 0;
  }

  lessThan(other: Quantity<D>): boolean {
    return this.compare(other) < 0;
  }

  greaterThan(other: Quantity<D>): boolean {
    return this.compare(other) > 0;
  }

  atLeast(other: Quantity<D>): boolean {
    return this.compare(other) >= 0;
  }

  atMost(other: Quantity<D>): boolean {
    return this.compare(other) <= 0;
  }

  isZero(): boolean {
    return signOfRatio(this.#exact) === 0;
  }

  isNegative(): boolean {
    return signOfRatio(this.#exact) < 0;
  }

  toJSON(): QuantityJSON {
    return quantityJSON(this.#dimension, this.#exact);
  }

  toString(): string {
    return fullText(this.#dimension, this.#exact, this.#written);
  }

  [Symbol.toPrimitive](hint: 'string' | 'number' | 'default'): string {
    if (hint === 'string') return this.toString();
    throw fault(
      'OPERATOR_ON_QUANTITY',
      `${aOrAn(this.#dimension)} is not a number: <, >, + and * do not work on it. Write compare, lessThan, greaterThan, plus or times, or toNumber with a unit`,
      { dimension: this.#dimension },
    );
  }

  [Symbol.for('nodejs.util.inspect.custom')](): string {
    return shortText(this.#dimension, this.#exact, this.#written);
  }

  #sameKind(other: Quantity<D>): Ratio {
    if (typeof other === 'object' && other !== null && #exact in other) {
      // nearly always one of ours: no check needed
      const { dimension } = other;
      if (dimension === this.#dimension) return other.#exact;
    }
    if (!isQuantity(other) || other.dimension !== this.#dimension) {
      throw otherKind(this.#dimension, other);
    }
    return exactOf(other);
  }

  #writtenWith(other: AnyQuantity): WrittenAs | undefined {
    return this.#written ?? writtenAs(other);
  }
}

/** The exact ratio inside a quantity. Internal. */
export function exactOf(quantity: AnyQuantity): Ratio {
  return ExactQuantity.exactOf(quantity);
}

/** How a quantity was written, if that is known. Internal. */
export function writtenAs(quantity: Quantity<'length'>): LengthForm | undefined;
export function writtenAs(quantity: AnyQuantity): WrittenAs | undefined;
export function writtenAs(quantity: AnyQuantity): WrittenAs | undefined {
  return ExactQuantity.writtenAs(quantity);
}

/** The quantity itself, or this copy's quantity with the value of another copy's. Internal. */
export function ownQuantity<D extends Dimension>(
  quantity: AnyQuantity & { readonly dimension: D },
): Quantity<D> {
  return ExactQuantity.own(quantity);
}

/** Checks that a value is a quantity of a dimension. Internal. */
export function quantityOf<D extends Dimension>(dimension: D, value: unknown): Quantity<D> {
  if (!isQuantity(value) || value.dimension !== dimension) throw otherKind(dimension, value);
  return ownQuantity(value as AnyQuantity & { readonly dimension: D });
}

/** The fault of a value that is not a quantity of the dimension needed. Internal. */
export function otherKind(dimension: Dimension, got: unknown) {
  return fault('DIMENSION_MISMATCH', `expected ${aOrAn(dimension)}, got ${shown(got)}`, {
    expected: dimension,
    got: isQuantity(got) ? got.dimension : typeof got,
  });
}

/** Makes a quantity from an exact value in SI units. Internal. */
export function fromSI<D extends Dimension>(
  dimension: D,
  exact: Ratio,
  written?: WrittenAs,
): Quantity<D> {
  return new ExactQuantity(dimension, exact, written);
}

/** Makes a quantity from a decimal in SI units. Internal. */
export function fromSIDecimal<D extends Dimension>(dimension: D, si: Decimal): Quantity<D> {
  return new ExactQuantity(dimension, decimalRatio(si));
}

/** Makes a quantity from an exact value in a unit, and keeps the unit for printing. Internal. */
export function fromUnit<D extends Dimension>(
  dimension: D,
  value: Ratio,
  unit: UnitOf<D>,
): Quantity<D> {
  const exact = multiplyRatios(value, entryOf(dimension, unit).exact);
  return new ExactQuantity(dimension, exact, unit);
}

function noProduct(first: Dimension, verb: string, second: Dimension) {
  return fault(
    'NO_KNOWN_PRODUCT',
    `${first} ${verb} ${second} is not a quantity this library has. Check which values you combine`,
    {
      first,
      second,
    },
  );
}

/** True for a number that {@link Quantity.times} accepts. Internal. */
export function isNumberInput(value: unknown): value is NumberInput {
  return typeof value === 'number' || typeof value === 'string' || isDecimal(value);
}
