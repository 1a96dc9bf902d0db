import { list, object, optional, quantity } from '../../input/field.js';
import { SITE_LENGTH } from '../../input/ranges.js';
import { shapeOf, type Field, type Values } from '../../input/shape.js';
import { sum } from '../../units/aggregate.js';
import type { LengthInput } from '../../units/construct.js';
import { wholeNumberUp } from '../../units/format-quantity.js';
import type { Area, Length } from '../../units/quantity.js';
import { NO_LENGTH } from '../../units/zero.js';

/** A rectangle to saw into liftable pieces. */
export interface SawGridInput {
  /** Length of the rectangle [length], more than 0 and at most 10 km. */
  readonly along: LengthInput;
  /** Width of the rectangle [length], more than 0 and at most 10 km. */
  readonly across: LengthInput;
  /** Longest side of a piece [length], more than 0 and at most 10 km. */
  readonly maximumPiece: LengthInput;
}

/** Saw cuts to make. */
export interface SawCutsInput {
  /** Lengths of cuts along edges where old paving stays [length each]. Default: none. */
  readonly runs?: readonly LengthInput[];
  /** A rectangle to saw into pieces. Default: none. */
  readonly grid?: SawGridInput;
}

const GRID = shapeOf<SawGridInput>()({
  along: quantity(SITE_LENGTH),
  across: quantity(SITE_LENGTH),
  maximumPiece: quantity(SITE_LENGTH),
});

const CUTS = shapeOf<SawCutsInput>()({
  runs: optional(list(quantity(SITE_LENGTH), { of: 'runs' }), []),
  grid: optional(object(GRID)),
});

/** Saw cuts to make. Internal. */
export const sawCuts: Field<Values<typeof CUTS>> = object(CUTS);

/** Saw cuts through old paving. */
export interface SawCuts {
  /** Total length of cuts. */
  readonly length: Length;
  /** Cuts along edges. */
  readonly runs: Length;
  /** Cuts of the grid. */
  readonly grid: Length;
  /** Pieces that the grid makes; 1 without a grid. */
  readonly pieces: number;
  /** Length times thickness, for the wear of the blade. */
  readonly face: Area;
}

/** Saw cuts through old paving. Internal. */
export function measureCuts({ runs, grid }: Values<typeof CUTS>, thickness: Length): SawCuts {
  const along = sum([NO_LENGTH, ...runs]);
  const { cuts, pieces } = grid === undefined ? NO_GRID : measureGrid(grid);
  const length = along.plus(cuts);
  return { length, runs: along, grid: cuts, pieces, face: length.times(thickness) };
}

const NO_GRID = { cuts: NO_LENGTH, pieces: 1 };

/** A rectangle cut into n by m pieces takes n - 1 cuts across and m - 1 along. */
function measureGrid({ along, across, maximumPiece }: Values<typeof GRID>) {
  const columns = wholeNumberUp(along, maximumPiece);
  const rows = wholeNumberUp(across, maximumPiece);
  const cuts = across.times(columns - 1).plus(along.times(rows - 1));
  return { cuts, pieces: columns * rows };
}
