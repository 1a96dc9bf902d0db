import { entry } from '../invariant.js';
import { fromSI, type Length } from '../units/quantity.js';
import { ZERO_RATIO } from '../units/ratio.js';
import { floatDepths, type Cell } from './grid-cells.js';
import type { SiteFrame } from './site-frame.js';
import { cellParts } from '../geometry/surface/bilinear.js';

/** The deepest corner of a grid, by row and column from 0. */
export interface GridDepth {
  /** Depth of the cut or fill, not negative. */
  readonly depth: Length;
  /** Row of the corner, from 0 at the origin. */
  readonly row: number;
  /** Column of the corner, from 0 at the origin. */
  readonly column: number;
}

const ZERO_LENGTH: Length = fromSI('length', ZERO_RATIO);

/** Rows and columns of the corners of a cell, in the order of its depths. Internal. */
export const cornersOf = (row: number, column: number) =>
  [
    [row, column],
    [row, column + 1],
    [row + 1, column + 1],
    [row + 1, column],
  ] as const;

/** Depths summed over cells. Times the area of a cell, they are volumes. Internal. */
export interface CellSums {
  readonly cut: Length;
  readonly fill: Length;
  /** Area of cut, in cells. */
  readonly cutCells: number;
  readonly fillCells: number;
}

/** Sums over no cells. Internal. */
export const NOTHING: CellSums = { cut: ZERO_LENGTH, fill: ZERO_LENGTH, cutCells: 0, fillCells: 0 };

/** Sums of one whole cell. The net is exact; in a cell with cut and fill, the smaller is rounded. Internal. */
export function sumsOf(cell: Cell, frame: SiteFrame): CellSums & { readonly isMixed: boolean } {
  const net = cell.depths.reduce((total, depth) => total.plus(depth)).dividedBy(4);
  const isCut = cell.depths.some((depth) => !depth.isNegative() && !depth.isZero());
  const isFill = cell.depths.some((depth) => depth.isNegative());
  if (!isFill) return { ...NOTHING, cut: net, cutCells: isCut ? 1 : 0, isMixed: false };
  if (!isCut) return { ...NOTHING, fill: net.negated(), fillCells: 1, isMixed: false };
  const parts = cellParts(floatDepths(cell, frame.unit));
  const isMoreCut = parts.cut > parts.fill;
  const less = frame.toLength(isMoreCut ? parts.fill : parts.cut);
  const cut = isMoreCut ? net.plus(less) : less;
  const fill = isMoreCut ? less : less.minus(net);
  return { cut, fill, cutCells: parts.cutArea, fillCells: parts.fillArea, isMixed: true };
}

/** Adds sums. Internal. */
export const addSums = (a: CellSums, b: CellSums): CellSums => ({
  cut: a.cut.plus(b.cut),
  fill: a.fill.plus(b.fill),
  cutCells: a.cutCells + b.cutCells,
  fillCells: a.fillCells + b.fillCells,
});

/** The deepest corner of the cells on one side of zero; null if there is none. Internal. */
export function deepest(cells: readonly Cell[], sign: 1 | -1): GridDepth | null {
  let found: GridDepth | null = null;
  for (const { row, column, depths } of cells) {
    cornersOf(row, column).forEach(([r, c], k) => {
      const depth = entry(depths, k).times(sign);
      if (depth.compare(found?.depth ?? ZERO_LENGTH) > 0) found = { depth, row: r, column: c };
    });
  }
  return found;
}
