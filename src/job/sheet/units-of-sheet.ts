import { formatFor } from '../../units/format-for.js';
import { formatLength } from '../../units/format-length.js';
import { formatQuantity } from '../../units/format-quantity.js';
import type { Rounding } from '../../units/round-ratio.js';
import { roundTo } from '../../units/rounding.js';
import { length as lengthOf } from '../../units/construct.js';
import type { AnyQuantity, Area, Length, Mass, Slope, Volume } from '../../units/quantity.js';

/** The two ways a sheet is written. */
export type SheetSystem = 'us' | 'metric';

/** How a sheet writes its measures. Internal. */
export interface SheetUnits {
  readonly isUs: boolean;
  readonly title: string;
  /** Name of the unit that depths are in. */
  readonly depthUnit: string;
  /** A depth without its unit: 27 1/4, 692. */
  readonly depth: (depth: Length) => string;
  /** The same, rounded up to the next mark of the tape. */
  readonly depthUp: (depth: Length) => string;
  /** A depth rounded to the marks of the tape. */
  readonly onTape: (depth: Length) => Length;
  /** The step of the tape in words: 1/16 in, 1 mm. */
  readonly tapeStep: string;
  /** A depth with its unit: 27 1/4 in, 692 mm. */
  readonly depthWithUnit: (depth: Length) => string;
  /** A long length: 24' 0", 7.315 m. */
  readonly long: (length: Length) => string;
  /** An elevation: 100.25 ft, 30.556 m. */
  readonly elevation: (length: Length) => string;
  /** An elevation or a rod reading among others of its unit: 103.42, 31.525. */
  readonly level: (length: Length) => string;
  /** Name of the unit of those. */
  readonly levelUnit: string;
  /** The step they are rounded to. */
  readonly levelStep: string;
  readonly area: (area: Area) => string;
  readonly volume: (volume: Volume) => string;
  /** Name of the unit of those. */
  readonly volumeUnit: string;
  readonly mass: (mass: Mass) => string;
  /** The unit that stone is ordered by. */
  readonly orderVolume: 'yd3' | 'm3';
}

const US_TAPE = lengthOf('1/16 in');
const METRIC_TAPE = lengthOf('1 mm');

const bare = (depth: Length, as: 'in' | 'mm', rounding: Rounding): string =>
  formatLength(depth, { as, rounding }).replace(` ${as}`, '');

const US: SheetUnits = {
  isUs: true,
  title: 'Feet and inches',
  depthUnit: 'in',
  depth: (depth) => bare(depth, 'in', 'half-even'),
  depthUp: (depth) => bare(depth, 'in', 'up'),
  onTape: (depth) => roundTo(depth, US_TAPE),
  tapeStep: '1/16 in',
  depthWithUnit: (depth) => formatLength(depth, { as: 'in' }),
  long: (length) => formatLength(length, { as: 'ft-in', nearest: '1/8 in' }),
  elevation: (length) => formatLength(length, { as: 'ft' }),
  level: (length) => formatLength(length, { as: 'ft' }).replace(/ ft$/, ''),
  levelUnit: 'ft',
  levelStep: '0.01 ft',
  area: (area) => inWords(formatQuantity(area, { as: 'ft2', places: 1 })),
  volume: (volume) => inWords(formatQuantity(volume, { as: 'yd3' })),
  volumeUnit: 'cu yd',
  mass: (mass) => formatFor(mass, 'us'),
  orderVolume: 'yd3',
};

const METRIC: SheetUnits = {
  isUs: false,
  title: 'Metres and millimetres',
  depthUnit: 'mm',
  depth: (depth) => bare(depth, 'mm', 'half-even'),
  depthUp: (depth) => bare(depth, 'mm', 'up'),
  onTape: (depth) => roundTo(depth, METRIC_TAPE),
  tapeStep: '1 mm',
  depthWithUnit: (depth) => formatLength(depth, { as: 'mm' }),
  long: (length) => formatLength(length, { as: 'm' }),
  elevation: (length) => formatLength(length, { as: 'm' }),
  level: (length) => formatLength(length, { as: 'm' }).replace(/ m$/, ''),
  levelUnit: 'm',
  levelStep: '0.001 m',
  area: (area) => formatQuantity(area, { as: 'm2', places: 2 }),
  volume: (volume) => formatQuantity(volume, { as: 'm3' }),
  volumeUnit: 'm3',
  mass: (mass) => formatFor(mass, 'metric'),
  orderVolume: 'm3',
};

/** The units of a system. Internal. */
export const unitsOfSheet = (system: SheetSystem): SheetUnits => (system === 'us' ? US : METRIC);

/** A printed measure in the marks of a sheet: `sq ft` for `ft2`, no space before a percent sign. Internal. */
export const inWords = (text: string): string =>
  text.replace(/ ft2$/, ' sq ft').replace(/ yd3$/, ' cu yd').replace(/ %$/, '%');

/** A quantity of any dimension in the marks of a sheet. Internal. */
export const measureText = (value: AnyQuantity, system: SheetSystem): string =>
  inWords(formatFor(value, system));

/** A share as printed on every sheet. Internal. */
export const percentText = (share: number): string => `${(share * 100).toFixed(1)}%`;

/** A slope as printed on every sheet. Internal. */
export const slopeText = (slope: Slope): string =>
  inWords(formatQuantity(slope, { as: 'percent', places: 1 }));
