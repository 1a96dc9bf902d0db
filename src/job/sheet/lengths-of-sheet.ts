import { formatQuantity } from '../../units/format-quantity.js';
import { partOf } from '../../units/part-of.js';
import { printLength } from '../../units/print-length.js';
import type { Area, Length } from '../../units/quantity.js';
import type { Rounding } from '../../units/round-ratio.js';
import { roundTo } from '../../units/rounding.js';
import { inWords } from './in-words.js';

/** The two ways a sheet is written. */
export type SheetSystem = 'us' | 'metric';

/** How sheets and drawings write lengths and areas. Internal. */
export interface SheetLengths {
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
}

const US_TAPE = partOf(1, 16, 'in');
const METRIC_TAPE = partOf(1, 1, 'mm');
const US_LONG = partOf(1, 8, 'in');

const bare = (depth: Length, as: 'in' | 'mm', rounding: Rounding): string =>
  printLength(depth, { as, rounding }).replace(` ${as}`, '');

const US: SheetLengths = {
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
};

const METRIC: SheetLengths = {
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
};

/** The lengths and areas of a system. Internal. */
export const lengthsOfSheet = (system: SheetSystem): SheetLengths =>
  system === 'us' ? US : METRIC;
