import { formatLength } from '../../units/format-length.js';
import { formatQuantity } from '../../units/format-quantity.js';
import type { Area, Length, Mass, Slope, Volume } from '../../units/quantity.js';

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
  readonly area: (area: Area) => string;
  readonly volume: (volume: Volume) => string;
  readonly mass: (mass: Mass) => string;
  /** What stone is ordered by: one of these. */
  readonly orderVolume: { readonly unit: 'yd3' | 'm3'; readonly name: string };
}

const US: SheetUnits = {
  isUs: true,
  title: 'Feet and inches',
  depthUnit: 'in',
  depth: (depth) => formatLength(depth, { as: 'in' }).replace(/ in$/, ''),
  depthWithUnit: (depth) => formatLength(depth, { as: 'in' }),
  long: (length) => formatLength(length, { as: 'ft-in', nearest: '1/8 in' }),
  elevation: (length) => formatLength(length, { as: 'ft' }),
  level: (length) => formatLength(length, { as: 'ft' }).replace(/ ft$/, ''),
  levelUnit: 'ft',
  area: (area) => formatQuantity(area, { as: 'ft2', places: 1 }),
  volume: (volume) => formatQuantity(volume, { as: 'yd3' }),
  mass: (mass) => formatQuantity(mass, { as: 'ton-us', places: 1 }).replace('ton-us', 'short tons'),
  orderVolume: { unit: 'yd3', name: 'whole yards' },
};

const METRIC: SheetUnits = {
  isUs: false,
  title: 'Metres and millimetres',
  depthUnit: 'mm',
  depth: (depth) => formatLength(depth, { as: 'mm' }).replace(/ mm$/, ''),
  depthWithUnit: (depth) => formatLength(depth, { as: 'mm' }),
  long: (length) => formatLength(length, { as: 'm' }),
  elevation: (length) => formatLength(length, { as: 'm' }),
  level: (length) => formatLength(length, { as: 'm' }).replace(/ m$/, ''),
  levelUnit: 'm',
  area: (area) => formatQuantity(area, { as: 'm2', places: 2 }),
  volume: (volume) => formatQuantity(volume, { as: 'm3' }),
  mass: (mass) => formatQuantity(mass, { as: 't', places: 1 }),
  orderVolume: { unit: 'm3', name: 'whole cubic metres' },
};

/** The units of a system. Internal. */
export const unitsOfSheet = (system: SheetSystem): SheetUnits => (system === 'us' ? US : METRIC);

/** A share as printed on every sheet. Internal. */
export const percentText = (share: number): string => `${(share * 100).toFixed(1)} %`;

/** A slope as printed on every sheet. Internal. */
export const slopeText = (slope: Slope): string =>
  formatQuantity(slope, { as: 'percent', places: 1 });
