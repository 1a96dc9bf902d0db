import { fault } from '../errors.js';

/**
 * The one table of units. Types, conversion engine, text readers, schema and tests all use it.
 *
 * Each unit is an exact pair: 1 unit = num / den of the SI unit of its dimension (the one whose pair
 * is 1 / 1). Every pair is exact by definition, from the international yard and pound (yd = 0.9144 m,
 * lb = 0.453 592 37 kg), the standard acceleration of gravity (9.806 65 m/s2), the US gallon (231 in3)
 * and the US survey foot (1200/3937 m). Only the angle units against the radian are not rational:
 * their numerator is pi, written to 100 digits.
 *
 * Sources: `nist-hb44` (Appendix C), `nist-sp811` (Appendix B.8), `survey-foot-notice`.
 */
export interface UnitDefinition {
  /** Numerator of the factor to the SI unit; text if a float cannot hold it. */
  readonly num: number | string;
  /** Denominator of the factor to the SI unit. */
  readonly den: number;
  /** Name of one: `foot`. */
  readonly singular: string;
  /** Name of more: `feet`. */
  readonly plural: string;
}

const PI =
  '3.141592653589793238462643383279502884197169399375105820974944592307816406286208998628034825342117068';

const unit = (
  num: number | string,
  den: number,
  singular: string,
  plural = `${singular}s`,
): UnitDefinition => Object.freeze({ num, den, singular, plural });

export const UNITS = Object.freeze({
  length: Object.freeze({
    mm: unit(1, 1000, 'millimetre'),
    cm: unit(1, 100, 'centimetre'),
    m: unit(1, 1, 'metre'),
    km: unit(1000, 1, 'kilometre'),
    in: unit(127, 5000, 'inch', 'inches'),
    ft: unit(381, 1250, 'foot', 'feet'),
    yd: unit(1143, 1250, 'yard'),
    'ft-us': unit(1200, 3937, 'US survey foot', 'US survey feet'),
    mi: unit(201_168, 125, 'mile'),
  }),
  area: Object.freeze({
    mm2: unit(1, 1_000_000, 'square millimetre'),
    cm2: unit(1, 10_000, 'square centimetre'),
    m2: unit(1, 1, 'square metre'),
    ha: unit(10_000, 1, 'hectare'),
    in2: unit(16129, 25_000_000, 'square inch', 'square inches'),
    ft2: unit(145161, 1_562_500, 'square foot', 'square feet'),
    yd2: unit(1306449, 1_562_500, 'square yard'),
    acre: unit(316160658, 78125, 'acre'),
  }),
  volume: Object.freeze({
    mm3: unit(1, 1_000_000_000, 'cubic millimetre'),
    l: unit(1, 1000, 'litre'),
    m3: unit(1, 1, 'cubic metre'),
    in3: unit(2048383, 125_000_000_000, 'cubic inch', 'cubic inches'),
    ft3: unit(55306341, 1_953_125_000, 'cubic foot', 'cubic feet'),
    yd3: unit(1493271207, 1_953_125_000, 'cubic yard'),
    'gal-us': unit(473176473, 125_000_000_000, 'US gallon'),
  }),
  mass: Object.freeze({
    g: unit(1, 1000, 'gram'),
    kg: unit(1, 1, 'kilogram'),
    t: unit(1000, 1, 'tonne'),
    oz: unit(45359237, 1_600_000_000, 'ounce'),
    lb: unit(45359237, 100_000_000, 'pound'),
    'ton-us': unit(45359237, 50_000, 'short ton'),
    'ton-uk': unit(317514659, 312_500, 'long ton'),
  }),
  density: Object.freeze({
    'kg/m3': unit(1, 1, 'kilogram per cubic metre', 'kilograms per cubic metre'),
    't/m3': unit(1000, 1, 'tonne per cubic metre', 'tonnes per cubic metre'),
    'lb/ft3': unit(28349523125, 1769802912, 'pound per cubic foot', 'pounds per cubic foot'),
    'lb/yd3': unit(28349523125, 47784678624, 'pound per cubic yard', 'pounds per cubic yard'),
    'ton-us/yd3': unit(
      3543690390625,
      2986542414,
      'short ton per cubic yard',
      'short tons per cubic yard',
    ),
  }),
  force: Object.freeze({
    N: unit(1, 1, 'newton'),
    kN: unit(1000, 1, 'kilonewton'),
    kgf: unit(196133, 20_000, 'kilogram-force', 'kilograms-force'),
    lbf: unit(8896443230521, 2_000_000_000_000, 'pound-force', 'pounds-force'),
    kip: unit(8896443230521, 2_000_000_000, 'kip'),
  }),
  // for a string or tape, a mass per length counts as its weight under standard gravity
  'line-weight': Object.freeze({
    'N/m': unit(1, 1, 'newton per metre', 'newtons per metre'),
    'g/m': unit(196133, 20_000_000, 'gram per metre', 'grams per metre'),
    'kg/m': unit(196133, 20_000, 'kilogram per metre', 'kilograms per metre'),
    'lb/ft': unit(8896443230521, 609_600_000_000, 'pound per foot', 'pounds per foot'),
    'lbf/ft': unit(8896443230521, 609_600_000_000, 'pound-force per foot', 'pounds-force per foot'),
  }),
  pressure: Object.freeze({
    Pa: unit(1, 1, 'pascal'),
    kPa: unit(1000, 1, 'kilopascal'),
    MPa: unit(1_000_000, 1, 'megapascal'),
    bar: unit(100_000, 1, 'bar'),
    psi: unit(
      8896443230521,
      1_290_320_000,
      'pound-force per square inch',
      'pounds-force per square inch',
    ),
    'lbf/ft2': unit(
      8896443230521,
      185_806_080_000,
      'pound-force per square foot',
      'pounds-force per square foot',
    ),
  }),
  slope: Object.freeze({
    ratio: unit(1, 1, 'rise over run', 'rise over run'),
    percent: unit(1, 100, 'percent', 'percent'),
    'in/ft': unit(1, 12, 'inch per foot', 'inches per foot'),
    'mm/m': unit(1, 1000, 'millimetre per metre', 'millimetres per metre'),
  }),
  angle: Object.freeze({
    rad: unit(1, 1, 'radian'),
    deg: unit(PI, 180, 'degree'),
    gon: unit(PI, 200, 'gon'),
    arcmin: unit(PI, 10_800, 'minute of arc', 'minutes of arc'),
    arcsec: unit(PI, 648_000, 'second of arc', 'seconds of arc'),
  }),
  time: Object.freeze({
    s: unit(1, 1, 'second'),
    min: unit(60, 1, 'minute'),
    h: unit(3600, 1, 'hour'),
  }),
  speed: Object.freeze({
    'm/s': unit(1, 1, 'metre per second', 'metres per second'),
    'm/min': unit(1, 60, 'metre per minute', 'metres per minute'),
    'km/h': unit(5, 18, 'kilometre per hour', 'kilometres per hour'),
    'ft/min': unit(127, 25_000, 'foot per minute', 'feet per minute'),
    mph: unit(1397, 3125, 'mile per hour', 'miles per hour'),
  }),
  flow: Object.freeze({
    'm3/s': unit(1, 1, 'cubic metre per second', 'cubic metres per second'),
    'm3/h': unit(1, 3600, 'cubic metre per hour', 'cubic metres per hour'),
    'l/s': unit(1, 1000, 'litre per second', 'litres per second'),
    'l/min': unit(1, 60_000, 'litre per minute', 'litres per minute'),
    'ft3/h': unit(6145149, 781_250_000_000, 'cubic foot per hour', 'cubic feet per hour'),
    'yd3/h': unit(165919023, 781_250_000_000, 'cubic yard per hour', 'cubic yards per hour'),
    'gal-us/min': unit(
      157725491,
      2_500_000_000_000,
      'US gallon per minute',
      'US gallons per minute',
    ),
  }),
} satisfies Record<string, Record<string, UnitDefinition>>);

/** The kinds of quantity. */
export type Dimension = keyof typeof UNITS;

/** The unit symbols of one kind of quantity. */
export type UnitOf<D extends Dimension> = {
  [K in Dimension]: keyof (typeof UNITS)[K] & string;
}[D];

/** Any unit symbol. */
export type Unit = UnitOf<Dimension>;

/** The kind of quantity a unit symbol belongs to: `DimensionOf<'yd3'>` is `'volume'`. */
export type DimensionOf<U extends Unit> = {
  [D in Dimension]: U extends UnitOf<D> ? D : never;
}[Dimension];

/** The unit symbols of length. */
export type LengthUnit = UnitOf<'length'>;
/** The unit symbols of area. */
export type AreaUnit = UnitOf<'area'>;
/** The unit symbols of volume. */
export type VolumeUnit = UnitOf<'volume'>;
/** The unit symbols of mass. */
export type MassUnit = UnitOf<'mass'>;
/** The unit symbols of density. */
export type DensityUnit = UnitOf<'density'>;
/** The unit symbols of force. */
export type ForceUnit = UnitOf<'force'>;
/** The unit symbols of the weight of a line per length. */
export type LineWeightUnit = UnitOf<'line-weight'>;
/** The unit symbols of pressure. */
export type PressureUnit = UnitOf<'pressure'>;
/** The unit symbols of slope. */
export type SlopeUnit = UnitOf<'slope'>;
/** The unit symbols of angle. */
export type AngleUnit = UnitOf<'angle'>;
/** The unit symbols of time. */
export type TimeUnit = UnitOf<'time'>;
/** The unit symbols of speed. */
export type SpeedUnit = UnitOf<'speed'>;
/** The unit symbols of flow: volume over time. */
export type FlowUnit = UnitOf<'flow'>;

/** The unit of `Quantity.si`. */
export const SI_UNIT = Object.freeze({
  length: 'm',
  area: 'm2',
  volume: 'm3',
  mass: 'kg',
  density: 'kg/m3',
  force: 'N',
  'line-weight': 'N/m',
  pressure: 'Pa',
  slope: 'ratio',
  angle: 'rad',
  time: 's',
  speed: 'm/s',
  flow: 'm3/s',
} as const satisfies { [D in Dimension]: UnitOf<D> });

/** Every dimension, in the order of the table. */
export const DIMENSIONS = Object.freeze(Object.keys(UNITS)) as readonly Dimension[];

/**
 *
 * The unit symbols of a dimension, in the order of the table.
 *
 * @throws `UNKNOWN_CHOICE` if this is not a dimension
 * @example
 * unitsOf('slope') //=> ['ratio', 'percent', 'in/ft', 'mm/m']
 */
export function unitsOf<D extends Dimension>(dimension: D): readonly UnitOf<D>[] {
  if (typeof dimension !== 'string' || !Object.hasOwn(UNITS, dimension)) {
    const choices = DIMENSIONS.join(', ');
    throw fault('UNKNOWN_CHOICE', `expected a dimension: one of ${choices}`, { choices });
  }
  return Object.keys(UNITS[dimension]) as UnitOf<D>[];
}
