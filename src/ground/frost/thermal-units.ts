import type { FieldPath } from '../../errors.js';
import { choice, float, object } from '../../input/field.js';
import type { Reader } from '../../input/reader.js';
import type { Field } from '../../input/shape.js';

/** A sum of degrees over days below freezing, such as a freezing index. */
export interface DegreeDaysInput {
  /** The number, 0 to 15 000 in degrees Celsius times days. */
  readonly value: number | string;
  /** Degrees Celsius or Fahrenheit, times days. */
  readonly unit: 'C-days' | 'F-days';
}

/** A temperature. */
export interface TemperatureInput {
  /** The number, -80 to 60 in degrees Celsius. */
  readonly value: number | string;
  /** Degrees Celsius or Fahrenheit. */
  readonly unit: 'C' | 'F';
}

/** A conductivity of heat. */
export interface ConductivityInput {
  /** The number, more than 0 and at most 20 in W/(m K). */
  readonly value: number | string;
  /** Watt per metre and kelvin, or Btu per hour, foot and degree Fahrenheit. */
  readonly unit: 'W/(m K)' | 'Btu/(h ft F)';
}

/** A heat per volume, such as the latent heat of the water in soil. */
export interface VolumeHeatInput {
  /** The number, 0 to 400 000 in kJ/m3. */
  readonly value: number | string;
  /** Kilojoule per cubic metre, or Btu per cubic foot. */
  readonly unit: 'kJ/m3' | 'Btu/ft3';
}

/** A heat capacity per volume. */
export interface HeatCapacityInput {
  /** The number, more than 0 and at most 10 000 in kJ/(m3 K). */
  readonly value: number | string;
  /** Kilojoule per cubic metre and kelvin, or Btu per cubic foot and degree Fahrenheit. */
  readonly unit: 'kJ/(m3 K)' | 'Btu/(ft3 F)';
}

/** Degrees Celsius times days; it can be given back as an input. */
export interface DegreeDays {
  /** The number. */
  readonly value: number;
  /** The unit of the number. */
  readonly unit: 'C-days';
}

/** A conductivity in W/(m K); it can be given back as an input. */
export interface Conductivity {
  /** The number. */
  readonly value: number;
  /** The unit of the number. */
  readonly unit: 'W/(m K)';
}

/** A heat per volume in kJ/m3; it can be given back as an input. */
export interface VolumeHeat {
  /** The number. */
  readonly value: number;
  /** The unit of the number. */
  readonly unit: 'kJ/m3';
}

/** A heat capacity per volume in kJ/(m3 K); it can be given back as an input. */
export interface HeatCapacity {
  /** The number. */
  readonly value: number;
  /** The unit of the number. */
  readonly unit: 'kJ/(m3 K)';
}

/** Exact by definition: the international table Btu, the foot, and 5/9 K to the degree F. */
const BTU = 1055.05585262;
const FOOT = 0.3048;
const FAHRENHEIT = 5 / 9;

/** Units of one kind: the SI value of a number in a unit, and the range in SI. */
interface Kind {
  readonly units: readonly [string, ...string[]];
  readonly toSI: (value: number, unit: string) => number;
  readonly sign: 'positive' | 'not-negative' | 'any';
  readonly least: number;
  readonly most: number;
}

const scaled =
  (us: string, factor: number) =>
  (value: number, unit: string): number =>
    unit === us ? value * factor : value;

const kindField = (kind: Kind): Field<number> => {
  const inner = object({
    value: float({ sign: kind.sign, most: 10_000_000, example: '900' }),
    unit: choice(kind.units),
  });
  const read = (reader: Reader, value: unknown, path: FieldPath): number => {
    const before = reader.faults();
    const given = inner.read(reader, value, path);
    if (reader.faults() > before) return 0;
    const si = kind.toSI(given.value, given.unit);
    if (si < kind.least || si > kind.most) refuse(reader, [...path, 'value'], kind);
    return si;
  };
  return { read, ...(inner.about === undefined ? {} : { about: inner.about }) };
};

function refuse(reader: Reader, path: FieldPath, kind: Kind): void {
  const { least, most, units } = kind;
  const message = `outside the range from ${least} to ${most} ${units[0]}. Check the digits and the unit`;
  reader.fail('OUT_OF_RANGE', path, message, { least, most });
}

/** An index of degree-days, in C-days. Internal. */
export const degreeDays = /* #__PURE__ */ kindField({
  units: ['C-days', 'F-days'],
  toSI: scaled('F-days', FAHRENHEIT),
  sign: 'not-negative',
  least: 0,
  most: 15_000,
});

/** A temperature, in degrees C. Internal. */
export const temperature = /* #__PURE__ */ kindField({
  units: ['C', 'F'],
  toSI: (value, unit) => (unit === 'F' ? (value - 32) * FAHRENHEIT : value),
  sign: 'any',
  least: -80,
  most: 60,
});

/** A conductivity, in W/(m K). Internal. */
export const conductivity = /* #__PURE__ */ kindField({
  units: ['W/(m K)', 'Btu/(h ft F)'],
  toSI: scaled('Btu/(h ft F)', BTU / (3600 * FOOT * FAHRENHEIT)),
  sign: 'positive',
  least: 0,
  most: 20,
});

/** A latent heat, in kJ/m3. Internal. */
export const volumeHeat = /* #__PURE__ */ kindField({
  units: ['kJ/m3', 'Btu/ft3'],
  toSI: scaled('Btu/ft3', BTU / 1000 / FOOT ** 3),
  sign: 'not-negative',
  least: 0,
  most: 400_000,
});

/** A heat capacity, in kJ/(m3 K). Internal. */
export const heatCapacity = /* #__PURE__ */ kindField({
  units: ['kJ/(m3 K)', 'Btu/(ft3 F)'],
  toSI: scaled('Btu/(ft3 F)', BTU / 1000 / FOOT ** 3 / FAHRENHEIT),
  sign: 'positive',
  least: 0,
  most: 10_000,
});

/** A result in C-days. Internal. */
export const asDegreeDays = (value: number): DegreeDays => ({ value, unit: 'C-days' });
/** A result in W/(m K). Internal. */
export const asConductivity = (value: number): Conductivity => ({ value, unit: 'W/(m K)' });
/** A result in kJ/m3. Internal. */
export const asVolumeHeat = (value: number): VolumeHeat => ({ value, unit: 'kJ/m3' });
/** A result in kJ/(m3 K). Internal. */
export const asHeatCapacity = (value: number): HeatCapacity => ({ value, unit: 'kJ/(m3 K)' });

/** W/(m K) in one Btu per hour, foot and degree F. Internal. */
export const BTU_CONDUCTIVITY = BTU / (3600 * FOOT * FAHRENHEIT);
/** kJ/kg in one Btu per pound. Internal. */
export const BTU_PER_POUND = BTU / 1000 / 0.45359237;
