import { fault } from '../errors.js';
import { SI_UNIT, type Dimension, type DimensionOf, type Unit, type UnitOf } from './catalogue.js';
import { anyEntryOf, entryOf } from './find-unit.js';
import { parseLength, type ParseLengthOptions } from './parse-length.js';
import { parseMeasure } from './parse-measure.js';
import { parseSlope } from './parse-slope.js';
import {
  fromUnit,
  isNumberInput,
  isQuantity,
  ownQuantity,
  quantityOf,
  type Angle,
  type Area,
  type Density,
  type Flow,
  type Force,
  type Length,
  type LineWeight,
  type Mass,
  type Pressure,
  type Quantity,
  type Slope,
  type Speed,
  type Time,
  type Volume,
} from './quantity.js';
import type { AnyQuantity, QuantityClone, QuantityJSON } from './quantity-types.js';
import { ZERO_RATIO } from './ratio.js';
import { readNumber, readWritten, type NumberInput } from './read-number.js';
import { unitMissing } from './reading-fault.js';
import { shownText } from '../shown-text.js';
import { aOrAn, shown } from './shown.js';

/** A quantity as input: the quantity itself, text with its unit, or value and unit. */
export type QuantityInput<D extends Dimension> = Quantity<D> | string | 0 | ValueAndUnit<D>;

/** A quantity as a number and its unit; a clone of a quantity is one too. */
export interface ValueAndUnit<D extends Dimension> {
  /** The number in the unit: a float, digits, a fraction as text or a decimal. */
  readonly value: NumberInput;
  /** A unit symbol of the dimension. */
  readonly unit: UnitOf<D>;
}

/** A length as input. */
export type LengthInput = QuantityInput<'length'>;
/** An area as input. */
export type AreaInput = QuantityInput<'area'>;
/** A volume as input. */
export type VolumeInput = QuantityInput<'volume'>;
/** A mass as input. */
export type MassInput = QuantityInput<'mass'>;
/** A density as input. */
export type DensityInput = QuantityInput<'density'>;
/** A force as input. */
export type ForceInput = QuantityInput<'force'>;
/** The weight of a line per length as input. */
export type LineWeightInput = QuantityInput<'line-weight'>;
/** A pressure as input. */
export type PressureInput = QuantityInput<'pressure'>;
/** A slope as input. */
export type SlopeInput = QuantityInput<'slope'>;
/** An angle as input. */
export type AngleInput = QuantityInput<'angle'>;
/** A length of time as input. */
export type TimeInput = QuantityInput<'time'>;
/** A speed as input. */
export type SpeedInput = QuantityInput<'speed'>;
/** A flow as input. */
export type FlowInput = QuantityInput<'flow'>;

/**
 * Makes a length from text that carries its unit, or from a number and a unit.
 *
 * @throws `UNIT_MISSING` for a bare number, `UNKNOWN_FIELD` for a field besides value and unit, the
 *   reading codes of {@link parseLength} for text
 * @example
 * length('7 ft 3 5/8 in').to('m').toString() //=> '2.225675'
 * length(300, 'mm').to('cm').toString() //=> '30'
 */
export function length(value: NumberInput, unit?: UnitOf<'length'>): Length {
  return make('length', value, unit);
}

/**
 * Makes an area.
 *
 * @throws as {@link length}
 * @example
 * area('81 ft2').to('yd2').toString() //=> '9'
 */
export function area(value: NumberInput, unit?: UnitOf<'area'>): Area {
  return make('area', value, unit);
}

/**
 * Makes a volume.
 *
 * @throws as {@link length}
 * @example
 * volume(27, 'ft3').to('yd3').toString() //=> '1'
 */
export function volume(value: NumberInput, unit?: UnitOf<'volume'>): Volume {
  return make('volume', value, unit);
}

/**
 * Makes a mass. A bare ton is refused: name `t`, `ton-us` or `ton-uk`.
 *
 * @throws as {@link length}, and `UNIT_AMBIGUOUS`
 * @example
 * mass('1 ton-us').to('lb').toString() //=> '2000'
 */
export function mass(value: NumberInput, unit?: UnitOf<'mass'>): Mass {
  return make('mass', value, unit);
}

/**
 * Makes a density.
 *
 * @throws as {@link length}, and `UNIT_AMBIGUOUS`
 * @example
 * density('150 lb/ft3').to('lb/yd3').toString() //=> '4050'
 */
export function density(value: NumberInput, unit?: UnitOf<'density'>): Density {
  return make('density', value, unit);
}

/**
 * Makes a force.
 *
 * @throws as {@link length}
 * @example
 * force('1 kip').to('lbf').toString() //=> '1000'
 */
export function force(value: NumberInput, unit?: UnitOf<'force'>): Force {
  return make('force', value, unit);
}

/**
 * Makes the weight of a line (a string, a tape) per length. A mass per length (`g/m`, `kg/m`,
 * `lb/ft`) counts as its weight under standard gravity, 9.80665 m/s2.
 *
 * @throws as {@link length}
 * @example
 * lineWeight('1.2 g/m').to('N/m').toString() //=> '0.01176798'
 * lineWeight('0.0007 lb/ft').equals(lineWeight('0.0007 lbf/ft')) //=> true
 */
export function lineWeight(value: NumberInput, unit?: UnitOf<'line-weight'>): LineWeight {
  return make('line-weight', value, unit);
}

/**
 * Makes a pressure.
 *
 * @throws as {@link length}
 * @example
 * pressure('1 psi').to('lbf/ft2').toString() //=> '144'
 */
export function pressure(value: NumberInput, unit?: UnitOf<'pressure'>): Pressure {
  return make('pressure', value, unit);
}

/**
 * Makes a slope, rise over run. You choose by the sign which way is down.
 *
 * @throws as {@link length}, and `SLOPE_AMBIGUOUS`
 * @example
 * slope('1/4 in per ft').to('percent').toFixed(4) //=> '2.0833'
 * slope('1:48').equals(slope('1/4 in per ft')) //=> true
 */
export function slope(value: NumberInput, unit?: UnitOf<'slope'>): Slope {
  return make('slope', value, unit);
}

/**
 * Makes an angle.
 *
 * @throws as {@link length}
 * @example
 * angle('90 deg').to('gon').toString() //=> '100'
 */
export function angle(value: NumberInput, unit?: UnitOf<'angle'>): Angle {
  return make('angle', value, unit);
}

/**
 * Makes a length of time.
 *
 * @throws as {@link length}
 * @example
 * time('90 min').to('h').toString() //=> '1.5'
 */
export function time(value: NumberInput, unit?: UnitOf<'time'>): Time {
  return make('time', value, unit);
}

/**
 * Makes a speed.
 *
 * @throws as {@link length}
 * @example
 * speed('20 m/min').times(time('30 s')).to('m').toString() //=> '10'
 */
export function speed(value: NumberInput, unit?: UnitOf<'speed'>): Speed {
  return make('speed', value, unit);
}

/**
 * Makes a flow: volume over time, for a pump, a bucket or a crew.
 *
 * @throws as {@link length}
 * @example
 * volume('1.2 m3').dividedBy(flow('120 l/min')).to('min').toString() //=> '10'
 */
export function flow(value: NumberInput, unit?: UnitOf<'flow'>): Flow {
  return make('flow', value, unit);
}

/**
 * Makes a quantity from a float and a unit, such as a result of bulk geometry. It takes the
 * shortest decimal digits of the float as exact.
 *
 * @param value - a float, up to 1e60; a tiny one, such as the noise of a calculation, is taken
 * @param unit - unit symbol of any dimension
 * @throws `NOT_FINITE`, `OUT_OF_RANGE`, `WRONG_TYPE`, `UNIT_UNKNOWN`, `UNIT_AMBIGUOUS`
 * @example
 * fromNumber(0.3048, 'm').to('ft').toString() //=> '1'
 */
export function fromNumber<U extends Unit>(value: number, unit: U): Quantity<DimensionOf<U>> {
  const entry = anyEntryOf(unit);
  if (typeof value !== 'number') {
    throw fault('WRONG_TYPE', `expected a number, got ${shown(value)}`);
  }
  const exact = Math.abs(value) < 1 ? readWritten(value) : readNumber(value);
  return fromUnit(entry.dimension as DimensionOf<U>, exact, unit as never);
}

/**
 * Restores a quantity, exactly, from its JSON form or from a clone made by `structuredClone`,
 * `postMessage` or browser storage.
 *
 * @param json - `{ value, unit }`, as `toJSON` or a clone has them
 * @throws `UNIT_UNKNOWN`, `NOT_A_NUMBER`, `NOT_FINITE`, `DIVISION_BY_ZERO`, `TOO_LONG`, `WRONG_TYPE`,
 *   `UNKNOWN_FIELD`
 * @example
 * fromJSON(length('1/3 in').toJSON()).equals(length('1/3 in')) //=> true
 * fromJSON(structuredClone(length('1/3 in'))).equals(length('1/3 in')) //=> true
 */
export function fromJSON<U extends Unit>(json: QuantityClone<U>): Quantity<DimensionOf<U>>;
export function fromJSON<D extends Dimension>(json: Quantity<D>): Quantity<D>;
export function fromJSON(json: QuantityJSON | QuantityClone | AnyQuantity): Quantity<Dimension>;
export function fromJSON(json: unknown): Quantity<Dimension> {
  if (isQuantity(json)) return ownQuantity(json);
  const { value, unit } = plainParts(json);
  const entry = anyEntryOf(unit);
  return fromUnit(entry.dimension, readWritten(value), entry.symbol);
}

function plainParts(json: unknown): QuantityClone {
  const isPlain = typeof json === 'object' && json !== null && 'value' in json && 'unit' in json;
  if (!isPlain || typeof json.unit !== 'string') {
    throw fault('WRONG_TYPE', `expected { value, unit }, got ${shown(json)}`);
  }
  refuseMore(json);
  const { value, unit } = json;
  if (typeof value === 'string' || typeof value === 'number') return { value, unit };
  throw fault('WRONG_TYPE', `expected digits, got ${shown(value)}`, {}, ['value']);
}

/**
 * Turns any accepted input into a quantity of a dimension. Internal: calculations use the reader,
 * which adds the field path.
 */
export function toQuantity<D extends Dimension>(
  dimension: D,
  input: QuantityInput<D>,
  options?: ParseLengthOptions,
): Quantity<D> {
  if (typeof input === 'string') return readText(dimension, input, options);
  if (isQuantity(input)) return quantityOf(dimension, input);
  if (input === 0) return fromUnit(dimension, ZERO_RATIO, SI_UNIT[dimension] as UnitOf<D>);
  if (isNumberInput(input)) throw unitMissing(dimension, input);
  if (typeof input !== 'object' || input === null || Array.isArray(input)) {
    throw fault('WRONG_TYPE', `expected ${aOrAn(dimension)}, got ${shown(input)}`);
  }
  refuseMore(input);
  const { value, unit } = input;
  if (unit === undefined) throw unitMissing(dimension, value);
  return fromUnit(dimension, readNumber(value), entryOf(dimension, unit).symbol as UnitOf<D>);
}

/** Refuses any field but value and unit. */
function refuseMore(input: object): void {
  const key = Object.keys(input).find((name) => name !== 'value' && name !== 'unit');
  if (key === undefined) return;
  throw fault('UNKNOWN_FIELD', NO_SUCH_FIELD, { key: shownText(key) }, [key]);
}

/** The message for a field of a quantity besides value and unit. Internal. */
export const NO_SUCH_FIELD = 'unknown field. A quantity takes value and unit';

function make<D extends Dimension>(
  dimension: D,
  value: NumberInput,
  unit: UnitOf<D> | undefined,
): Quantity<D> {
  if (unit === undefined) return toQuantity(dimension, value as QuantityInput<D>);
  if (!isNumberInput(value)) {
    throw fault('WRONG_TYPE', `expected a number with the unit, got ${shown(value)}`);
  }
  return fromUnit(dimension, readNumber(value), entryOf(dimension, unit).symbol as UnitOf<D>);
}

const NOTHING = /^\s*[+-]?0{1,9}(?:\.0{0,9})?\s*$/;

function readText<D extends Dimension>(
  dimension: D,
  text: string,
  options: ParseLengthOptions | undefined,
): Quantity<D> {
  // zero is zero in every unit
  if (NOTHING.test(text)) return fromUnit(dimension, ZERO_RATIO, SI_UNIT[dimension] as UnitOf<D>);
  return parse(dimension, text, options) as Quantity<D>;
}

function parse(dimension: Dimension, text: string, options: ParseLengthOptions | undefined) {
  if (dimension === 'length') return parseLength(text, options);
  if (dimension === 'slope') return parseSlope(text, options);
  return parseMeasure(dimension, text, options);
}
