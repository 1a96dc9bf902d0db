import { formatQuantity } from '../../../units/format-quantity.js';
import { partOf } from '../../../units/part-of.js';
import { printLength } from '../../../units/print-length.js';
import type { Area, Length } from '../../../units/quantity.js';
import type { Rounding } from '../../../units/round-ratio.js';
import { inWords } from '../words/in-words.js';

/** The two ways a sheet is written. */
export type SheetSystem = 'us' | 'metric';

/** How sheets and drawings write lengths and areas. Internal. */
export interface SheetLengths {
  readonly isUs: boolean;
  /** Name of the unit that depths are in. */
  readonly depthUnit: string;
  /** A depth without its unit: 27 1/4, 692. */
  readonly depth: (depth: Length) => string;
  /** The same, rounded up to the next mark of the tape. */
  readonly depthUp: (depth: Length) => string;
  /** A depth with its unit: 27 1/4 in, 692 mm. */
  readonly depthWithUnit: (depth: Length) => string;
  /** A long length: 24' 0", 7.315 m. */
  readonly long: (length: Length) => string;
  readonly area: (area: Area) => string;
}

const US_LONG = partOf(1, 8, 'in');

const bare = (depth: Length, as: 'in' | 'mm', rounding: Rounding): string =>
  printLength(depth, { as, rounding }).replace(` ${as}`, '');

const US: SheetLengths = {
  isUs: true,
  depthUnit: 'in',
  depth: (depth) => bare(depth, 'in', 'half-even'),
  depthUp: (depth) => bare(depth, 'in', 'up'),
  depthWithUnit: (depth) => printLength(depth, { as: 'in' }),
  long: (length) => printLength(length, { as: 'ft-in', nearest: US_LONG }),
  area: (area) => inWords(formatQuantity(area, { as: 'ft2', places: 1 })),
};

const METRIC: SheetLengths = {
  isUs: false,
  depthUnit: 'mm',
  depth: (depth) => bare(depth, 'mm', 'half-even'),
  depthUp: (depth) => bare(depth, 'mm', 'up'),
  depthWithUnit: (depth) => printLength(depth, { as: 'mm' }),
  long: (length) => printLength(length, { as: 'm' }),
  area: (area) => formatQuantity(area, { as: 'm2', places: 2 }),
};

/** The lengths and areas of a system. Internal. */
export const lengthsOfSheet = (system: SheetSystem): SheetLengths =>
  system === 'us' ? US : METRIC;
