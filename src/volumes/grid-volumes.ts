// The outline is read, with its arcs, by the outline folder: one description for all calculations.
import { exactlyOne } from '../input/exactly-one.js';
import { makeReader, type Reader } from '../input/reader.js';
import { readOutline, type OutlineInput } from '../outline/read-outline.js';
import { cautionsFor, type Caution } from '../sources/cautions.js';
import type { LengthInput } from '../units/construct.js';
import { fromSI, type Area, type Length, type Volume } from '../units/quantity.js';
import { ZERO_RATIO } from '../units/ratio.js';
import { given, withWorking, type Worked } from '../working.js';
import { cellsOf, clipCells, type Cell, type ClippedCells } from './grid-cells.js';
import {
  addSums,
  cornersOf,
  deepest,
  NOTHING,
  sumsOf,
  type CellSums,
  type GridDepth,
} from './grid-sums.js';
import { PLACE, SPACING } from './limits.js';
import { readGrid, type GridInput } from './read-depth-grid.js';
import { readPlane, type ReadPlane, type SitePlaneInput } from './read-site-design.js';
import { makeFrame, type SiteFrame } from './site-frame.js';
import { inState, type StateVolume } from './state-volume.js';

export type { GridDepth } from './grid-sums.js';

/** Cut and fill over a grid of depths. */
export interface GridVolumes extends Worked {
  readonly cut: StateVolume<'bank'>;
  readonly fill: StateVolume<'compacted'>;
  /** Room of the cut less room of the fill. */
  readonly net: Volume;
  readonly cutArea: Area;
  readonly fillArea: Area;
  /** Of the cells and parts of cells that were counted. */
  readonly area: Area;
  /** Part of the outline that no cell reaches: nothing is counted there. */
  readonly uncoveredArea: Area;
  readonly isCovered: boolean;
  /** Net over the area, + where there is cut. */
  readonly meanDepth: Length;
  /** Cells counted whole, cells cut by the outline, and whole cells with both cut and fill. */
  readonly cells: { readonly whole: number; readonly partial: number; readonly mixed: number };
  /** Places with a depth that no cell has for a corner: they count for nothing. */
  readonly unusedPlaces: number;
  /** The deepest corners of the cells counted; null where there is no cut, or no fill. */
  readonly deepestCut: GridDepth | null;
  readonly deepestFill: GridDepth | null;
  readonly cautions: readonly Caution[];
}

/**
 * Cut and fill over a grid of spot heights: each cell holds `V = A (d1 + d2 + d3 + d4) / 4`, which is
 * exact for a surface that is straight along and across between the corners. Cells with cut and fill
 * are split along their zero line, cells at the outline are cut by it (both in floats, to 12 digits,
 * arcs in chords). Cells that lack a corner count for nothing.
 *
 * @param options.depths - `{ unit, rows }` or rows of lengths, `null` where there is none; + where the
 *   existing surface is above the design. Row 0 lies at the origin, the next rows along y; columns run
 *   along x. At most 20 000 places
 * @param options.heights - instead of depths: elevations of the existing surface, with
 * @param options.design - the plane to dig or fill to, as in `siteVolumes`
 * @param options.spacing - of rows and columns [length], or `{ x, y }` apart
 * @param options.origin - `{ x, y }` of row 0, column 0 [length], default 0, 0
 * @param options.outline - where to dig, as in `outlineArea`; default all cells
 * @returns cut in the bank, fill compacted, net, areas, mean depth, counts of cells, deepest corners
 * @throws `GRID_UNEVEN`, `TOO_FEW_POINTS`, `SURFACES_APART`, `ONE_OF`, `NOT_POSITIVE`,
 *   `OUT_OF_RANGE`, `CAPACITY_EXCEEDED`, the codes of `outlineArea` and the reading codes
 * @source derived
 * @example
 * const pit = gridVolumes({
 *   depths: { unit: 'm', rows: [[0.4, 0.3, 0.2], [0.4, 0.3, 0.2], [null, 0.5, 0.4]] },
 *   spacing: '5 m',
 * });
 * pit.cut.to('m3').toString() //=> '23.75'
 * pit.cells.whole //=> 3
 */
export function gridVolumes(options: {
  readonly depths?: GridInput;
  readonly heights?: GridInput;
  readonly design?: SitePlaneInput;
  readonly spacing: LengthInput | { readonly x: LengthInput; readonly y: LengthInput };
  readonly origin?: { readonly x: LengthInput; readonly y: LengthInput };
  readonly outline?: OutlineInput;
}): GridVolumes {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const which = exactlyOne(reader, fields, ['depths', 'heights'], []) ?? 'depths';
  const grid = fields[which] === undefined ? NO_GRID : readGrid(reader, fields[which], [which]);
  const plane =
    which === 'heights'
      ? readPlane(reader, reader.object(fields['design'], ['design']))
      : undefined;
  if (which === 'depths' && fields['design'] !== undefined) {
    reader.fail('ONE_OF', ['design'], 'depths are below the design already: give it with heights', {
      choices: 'depths, design',
    });
  }
  const spacing = readSpacing(reader, fields['spacing']);
  const origin = readOrigin(reader, fields['origin']);
  const outline =
    fields['outline'] === undefined
      ? undefined
      : readOutline(reader, fields['outline'], ['outline']);
  const place = { origin, spacing };
  const depths = plane === undefined ? grid.rows : depthsUnder(grid.rows, plane, place);
  const cells = cellsOf(depths);
  if (grid.rows.length > 0 && cells.length === 0) {
    reader.fail('TOO_FEW_POINTS', [which], 'no cell has all its four corners');
  }
  reader.finish();
  const frame = makeFrame({ ...origin, z: ZERO_LENGTH }, grid.unit);
  const clipped = outline && clipCells(cells, outline, { ...place, unit: frame.unit });
  if (clipped !== undefined && clipped.whole.length + clipped.partial.length === 0) {
    reader.fail('SURFACES_APART', ['outline'], 'no cell of the grid reaches into the outline');
    reader.finish();
  }
  const used = new Set(cells.flatMap(({ row, column }) => cornersOf(row, column).map(String)));
  const known = depths.flat().filter((depth) => depth !== null).length;
  const cellArea = spacing.x.times(spacing.y);
  return describe({ cells, clipped, cellArea, frame, unused: known - used.size });
}

const ZERO_LENGTH: Length = fromSI('length', ZERO_RATIO);
const ZERO_AREA: Area = fromSI('area', ZERO_RATIO);
const NO_GRID = Object.freeze({ rows: [], unit: undefined });

interface Plan {
  readonly x: Length;
  readonly y: Length;
}

function readSpacing(reader: Reader, value: unknown): Plan {
  const isPair = typeof value === 'object' && value !== null && 'x' in value;
  if (!isPair) {
    const both = reader.quantity('length', value, ['spacing'], SPACING);
    return { x: both, y: both };
  }
  const fields = reader.object(value, ['spacing']);
  const read = (axis: 'x' | 'y') =>
    reader.quantity('length', fields[axis], ['spacing', axis], SPACING);
  return { x: read('x'), y: read('y') };
}

function readOrigin(reader: Reader, value: unknown): Plan {
  if (value === undefined) return { x: ZERO_LENGTH, y: ZERO_LENGTH };
  const fields = reader.object(value, ['origin']);
  const read = (axis: 'x' | 'y') =>
    reader.quantity('length', fields[axis], ['origin', axis], PLACE);
  return { x: read('x'), y: read('y') };
}

type Rows = readonly (readonly (Length | null)[])[];

/** How far each height stands above the plane. */
function depthsUnder(
  rows: Rows,
  { z0, gradeX, gradeY }: ReadPlane,
  { origin, spacing }: { readonly origin: Plan; readonly spacing: Plan },
): Rows {
  return rows.map((row, r) => {
    const start = z0.plus(origin.y.plus(spacing.y.times(r)).times(gradeY));
    return row.map((height, c) => {
      const x = origin.x.plus(spacing.x.times(c));
      return height === null ? null : height.minus(start.plus(x.times(gradeX)));
    });
  });
}

interface Counted {
  readonly cells: readonly Cell[];
  readonly clipped: ClippedCells | undefined;
  readonly cellArea: Area;
  readonly frame: SiteFrame;
  readonly unused: number;
}

/** Of the area of an outline: what its parts may miss by rounding. */
const ROUNDING = 1e-9;

function describe({ cells, clipped, cellArea, frame, unused }: Counted): GridVolumes {
  const whole = clipped?.whole ?? cells;
  const each = whole.map((cell) => sumsOf(cell, frame));
  const { parts, outlineArea = 0, partial = [] } = clipped ?? {};
  const counted = [...whole, ...partial];
  const atOutline: CellSums =
    parts === undefined
      ? NOTHING
      : {
          cut: frame.toLength(parts.cut),
          fill: frame.toLength(parts.fill),
          cutCells: parts.cutArea,
          fillCells: parts.fillArea,
        };
  const sums = each.reduce(addSums, atOutline);
  const inCells = (count: number): Area => cellArea.times(Number(count.toPrecision(12)));
  const [cut, fill] = [sums.cut.times(cellArea), sums.fill.times(cellArea)];
  const net = cut.minus(fill);
  const area = cellArea.times(whole.length).plus(parts ? inCells(parts.area) : ZERO_AREA);
  const missing = outlineArea - whole.length - (parts?.area ?? 0);
  const isCovered = missing <= ROUNDING * outlineArea;
  const found = {
    cut: inState(cut, 'bank'),
    fill: inState(fill, 'compacted'),
    net,
    cutArea: inCells(sums.cutCells),
    fillArea: inCells(sums.fillCells),
    area,
    uncoveredArea: isCovered ? ZERO_AREA : inCells(missing),
    isCovered,
    meanDepth: net.dividedBy(area),
    cells: {
      whole: whole.length,
      partial: partial.length,
      mixed: each.filter(({ isMixed }) => isMixed).length,
    },
    unusedPlaces: unused,
    deepestCut: deepest(counted, 1),
    deepestFill: deepest(counted, -1),
    cautions: cautionsFor('excavation', 'utilities'),
  };
  return withWorking(found, () => [
    {
      title: 'Cut and fill over a grid',
      formula: 'N = C - F, each cell A (d1 + d2 + d3 + d4) / 4',
      given: [
        given('A', 'area of a cell', cellArea),
        given('n', 'whole cells', whole.length),
        given('m', 'cells cut by the outline', partial.length),
        given('C', 'cut, in the bank', cut),
        given('F', 'fill, compacted', fill),
      ],
      result: given('N', 'net', net),
      source: 'derived',
    },
  ]);
}
