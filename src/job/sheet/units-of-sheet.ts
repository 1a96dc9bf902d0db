import { formatFor } from '../../units/format-for.js';
import { partOf } from '../../units/part-of.js';
import { printLength } from '../../units/print-length.js';
import { formatQuantity } from '../../units/format-quantity.js';
import type { Rounding } from '../../units/round-ratio.js';
import { roundTo } from '../../units/rounding.js';
import {
  type AnyQuantity,
  type Area,
  type Flow,
  type Length,
  type Mass,
  type Slope,
  type Volume,
} from '../../units/quantity.js';

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
  /** Water to sprinkle: 95 gallons, 360 l. */
  readonly water: (water: Volume) => string;
  /** A flow of water: 22 gallons a minute, 83 l/min. */
  readonly flow: (flow: Flow) => string;
  /** The unit that stone is ordered by. */
  readonly orderVolume: 'yd3' | 'm3';
}

const US_TAPE = partOf(1, 16, 'in');
const METRIC_TAPE = partOf(1, 1, 'mm');
const US_LONG = partOf(1, 8, 'in');

const bare = (depth: Length, as: 'in' | 'mm', rounding: Rounding): string =>
  printLength(depth, { as, rounding }).replace(` ${as}`, '');

const US: SheetUnits = {
  isUs: true,
  title: 'Feet and inches',
  depthUnit: 'in',
  depth: (depth) => bare(depth, 'in', 'half-even'),
  depthUp: (depth) => bare(depth, 'in', 'up'),
  onTape: (depth) => roundTo(depth, US_TAPE),
  tapeStep: '1/16 in',
  depthWithUnit: (depth) => printLength(depth, { as: 'in' }),
  long: (length) => printLength(length, { as: 'ft-in', nearest: US_LONG }),
  elevation: (length) => printLength(length, { as: 'ft' }),
  level: (length) => printLength(length, { as: 'ft' }).replace(/ ft$/, ''),
  levelUnit: 'ft',
  levelStep: '0.01 ft',
  area: (area) => inWords(formatQuantity(area, { as: 'ft2', places: 1 })),
  volume: (volume) => inWords(formatQuantity(volume, { as: 'yd3' })),
  volumeUnit: 'cu yd',
  mass: (mass) => formatFor(mass, 'us'),
  water: (water) => inWords(formatQuantity(water, { as: 'gal-us', places: 0 })),
  flow: (flow) => inWords(formatFor(flow, 'us')),
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
  depthWithUnit: (depth) => printLength(depth, { as: 'mm' }),
  long: (length) => printLength(length, { as: 'm' }),
  elevation: (length) => printLength(length, { as: 'm' }),
  level: (length) => printLength(length, { as: 'm' }).replace(/ m$/, ''),
  levelUnit: 'm',
  levelStep: '0.001 m',
  area: (area) => formatQuantity(area, { as: 'm2', places: 2 }),
  volume: (volume) => formatQuantity(volume, { as: 'm3' }),
  volumeUnit: 'm3',
  mass: (mass) => formatFor(mass, 'metric'),
  water: (water) => formatQuantity(water, { as: 'l', places: 0 }),
  flow: (flow) => formatFor(flow, 'metric'),
  orderVolume: 'm3',
};

/** The units of a system. Internal. */
export const unitsOfSheet = (system: SheetSystem): SheetUnits => (system === 'us' ? US : METRIC);

/** A printed measure in the marks of a sheet: `sq ft` for `ft2`, no space before a percent sign. Internal. */
export const inWords = (text: string): string =>
  text
    .replace(/ ft2$/, ' sq ft')
    .replace(/ yd3$/, ' cu yd')
    .replace(/ gal-us$/, ' gal')
    .replace(/ gal-us\/min$/, ' gal/min')
    .replace(/ %$/, '%');

/** A quantity of any dimension in the marks of a sheet. Internal. */
export const measureText = (value: AnyQuantity, system: SheetSystem): string =>
  inWords(formatFor(value, system));

/** A share as printed on every sheet. Internal. */
export const percentText = (share: number): string => `${(share * 100).toFixed(1)}%`;

/** A slope as printed on every sheet. Internal. */
export const slopeText = (slope: Slope): string =>
  inWords(formatQuantity(slope, { as: 'percent', places: 1 }));
