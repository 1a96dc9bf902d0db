import { partOf } from '../../../units/part-of.js';
import { printLength } from '../../../units/print-length.js';
import type { Length } from '../../../units/quantity.js';
import { roundTo } from '../../../units/rounding.js';
import type { SheetSystem } from './lengths-of-sheet.js';

/** What sheets and drawings round to. Internal. */
export interface SheetTape {
  /** A depth rounded to the marks of the tape. */
  readonly onTape: (depth: Length) => Length;
  /** The step of the tape in words: 1/16 in, 1 mm. */
  readonly tapeStep: string;
  /** An elevation or a rod reading among others of its unit: 103.42, 31.525. */
  readonly level: (length: Length) => string;
}

const US_TAPE = partOf(1, 16, 'in');
const METRIC_TAPE = partOf(1, 1, 'mm');

const US: SheetTape = {
  onTape: (depth) => roundTo(depth, US_TAPE),
  tapeStep: '1/16 in',
  level: (length) => printLength(length, { as: 'ft' }).replace(/ ft$/, ''),
};

const METRIC: SheetTape = {
  onTape: (depth) => roundTo(depth, METRIC_TAPE),
  tapeStep: '1 mm',
  level: (length) => printLength(length, { as: 'm' }).replace(/ m$/, ''),
};

/** The marks of the tape and the levels of a system. Internal. */
export const tapeOfSheet = (system: SheetSystem): SheetTape => (system === 'us' ? US : METRIC);
