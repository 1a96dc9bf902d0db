import { choice, flag, optional, whole } from '../input/field.js';
import { DRAWING_WIDTH } from '../input/ranges.js';
import { readOptions, shapeOf, type Check, type Shape } from '../input/shape.js';
import { systemField } from '../job/sheet/layout/sheet-options.js';
import {
  lengthsOfSheet,
  type SheetLengths,
  type SheetSystem,
} from '../job/sheet/layout/lengths-of-sheet.js';
import {
  labeller,
  labelField,
  type DrawingLabel,
  type Labeller,
  type LabelTexts,
} from './draw-label.js';
import type { DrawTheme } from './frame/themes.js';

/** How a drawing is made. */
export interface DrawOptions {
  /** Feet and inches, or metres and millimetres. */
  readonly system: SheetSystem;
  /** Width of the drawing in pixels, 320 to 2400; at least 600 unless `narrow`. Default 720, or 360 if `narrow`. */
  readonly width?: number;
  /** True for the layout of a phone held upright. Default false. */
  readonly narrow?: boolean;
  /**
   * `print`: black with hatches, for paper. `screen`: light or dark, as the reader's screen is set.
   * Default `print`.
   */
  readonly theme?: DrawTheme;
  /** Writes the labels in another language. Default: English. */
  readonly label?: DrawingLabel;
}

/** Fields that every drawing reads. Internal. */
export const DRAW_FIELDS = {
  system: systemField,
  width: optional(whole(DRAWING_WIDTH)),
  narrow: optional(flag, false),
  theme: optional(choice<DrawTheme>(['print', 'screen']), 'print'),
  label: optional(labelField),
} satisfies Shape;

const LEAST_WIDE = 600;

/** Refuses a width that the layout has no room in. Internal. */
export const checkWidth: Check<typeof DRAW_FIELDS> = (reader, { width, narrow }, path) => {
  if (width === undefined || narrow !== false || width >= LEAST_WIDE) return;
  const message = `${width} pixels are too narrow for this layout. Set narrow: true, or at least ${LEAST_WIDE}`;
  reader.fail('OUT_OF_RANGE', [...path, 'width'], message, { got: width, least: LEAST_WIDE });
};

/** Sizes of a drawing in pixels. Internal. */
export interface DrawStyle {
  readonly system: SheetSystem;
  readonly units: SheetLengths;
  readonly theme: DrawTheme;
  readonly label: Labeller;
  readonly isNarrow: boolean;
  readonly width: number;
  /** Clear space at the sides. */
  readonly margin: number;
  /** Type sizes: of the title, of figures, of what explains them. */
  readonly title: number;
  readonly size: number;
  readonly small: number;
}

/** Options of a drawing as read. */
interface ReadDrawOptions {
  readonly system: SheetSystem;
  readonly width: number | undefined;
  readonly narrow: boolean;
  readonly theme: DrawTheme;
  readonly label: DrawingLabel | undefined;
}

/** The style of a drawing from its options as read, and from its English texts. Internal. */
export function drawStyle(read: ReadDrawOptions, texts: LabelTexts): DrawStyle {
  const { system, narrow, theme, label } = read;
  const sizes = narrow
    ? { width: 360, margin: 10, title: 17, size: 14, small: 12.5 }
    : { width: 720, margin: 18, title: 20, size: 15, small: 13 };
  return {
    ...sizes,
    system,
    theme,
    units: lengthsOfSheet(system),
    label: labeller(label, texts),
    isNarrow: narrow,
    width: read.width ?? sizes.width,
  };
}

const OPTIONS = shapeOf<DrawOptions>()(DRAW_FIELDS);

/** The style of a drawing that has no options of its own. Internal. */
export const readStyle = (options: DrawOptions, texts: LabelTexts): DrawStyle =>
  drawStyle(readOptions(options, OPTIONS, checkWidth), texts);
