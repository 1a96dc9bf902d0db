import { choice, optional, whole } from '../../input/field.js';
import { readOptions, shapeOf } from '../../input/shape.js';
import { SHEET_WIDTH } from '../../input/ranges.js';
import type { SheetSystem } from './units-of-sheet.js';

/** How a sentence is written. */
export interface DescribePartOptions {
  /** Feet and inches, or metres and millimetres. */
  readonly system: SheetSystem;
}

/** How a sheet is written. */
export interface JobSheetOptions {
  /** Feet and inches, or metres and millimetres. */
  readonly system: SheetSystem;
  /** Characters in a line, 40 to 120. Default 48: a phone held upright, or half a printed page. */
  readonly width?: number;
}

/** The two ways of writing, as a field. Internal. */
export const systemField = choice<SheetSystem>(['us', 'metric']);

const DESCRIBE = shapeOf<DescribePartOptions>()({ system: systemField });

/** Reads how a sentence is written. Internal. */
export const readSystem = (options: unknown): SheetSystem => readOptions(options, DESCRIBE).system;

/** Reads how a sheet is written; `width` stands where none is given. Internal. */
export const readSheetOptions = (options: unknown, width = 48): Required<JobSheetOptions> =>
  readOptions(
    options,
    shapeOf<JobSheetOptions>()({
      system: systemField,
      width: optional(whole(SHEET_WIDTH), width),
    }),
  );
