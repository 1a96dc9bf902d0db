import type { DrawStyle } from '../draw-options.js';
import { roundFactor } from '../frame/scale.js';
import type { SectionFigures } from './section-figures.js';

/** Where the parts of a section stand, in pixels. Internal. */
export interface SectionFrame {
  /** Sides of the picture. */
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** Edge of the paving. */
  readonly edge: number;
  /** The column of depths. */
  readonly table: number;
  /** Heights over the scale across. */
  readonly factor: number;
  readonly pixelsPerMetre: number;
  /** A distance beyond the paving. */
  readonly x: (beyond: number) => number;
  /** A depth below the string. */
  readonly y: (depth: number) => number;
}

/** Height of a row of the column of depths in parts of its type size. Internal. */
export const ROW = 1.4;

const SIZES = {
  wide: { column: 29, ground: 92, most: 190, table: 215, least: 290 },
  narrow: { column: 24, ground: 28, most: 50, table: 174, least: 250 },
} as const;

/** Columns of turned dimensions left of the picture. Internal. */
export const turnedColumns = (figures: SectionFigures, { isNarrow }: DrawStyle): number =>
  figures.stripped === null || isNarrow ? 1 : 3;

/** Lays out a section from a height down. Internal. */
export function sectionFrame(figures: SectionFigures, top: number, style: DrawStyle): SectionFrame {
  const sizes = SIZES[style.isNarrow ? 'narrow' : 'wide'];
  const rows = figures.surfaces.length + figures.layers.length + 2;
  const high = Math.max(sizes.least, rows * style.size * ROW);
  const head = top + (figures.hasString ? 52 : 24);
  const from = Math.min(0, figures.old, figures.finish);
  const down = high / (figures.lowest - from);
  const needed = (figures.beyond * down) / sizes.most;
  const factor = needed <= 1 ? 1 : roundFactor(needed, 'up');
  const across = down / factor;
  const left = style.margin + turnedColumns(figures, style) * sizes.column;
  const table = style.width - style.margin - sizes.table;
  const edge = left + sizes.ground + figures.beyond * across;
  return {
    left,
    right: table - (style.isNarrow ? 20 : 26),
    top: head,
    bottom: head + high,
    edge,
    table,
    factor,
    pixelsPerMetre: across,
    x: (beyond) => edge - beyond * across,
    y: (depth) => head + (depth - from) * down,
  };
}
