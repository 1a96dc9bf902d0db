import { known } from '../invariant.js';
// The outline is read, with its arcs, by the outline folder: one description for all calculations.
import { fault } from '../errors.js';
import { exactlyOne } from '../input/exactly-one.js';
import { custom, object, optional, quantity } from '../input/field.js';
import { DISTANCE, PLACE } from '../input/ranges.js';
import { readOptions, shapeOf, type Check, type Field } from '../input/shape.js';
import { readOutline, type OutlineInput } from '../outline/read-outline.js';
import { cautionsFor, type Cautioned } from '../sources/cautions.js';
import type { LengthInput } from '../units/construct.js';
import type { Area, Length, Volume } from '../units/quantity.js';
import { NO_AREA, NO_LENGTH, NO_SLOPE } from '../units/zero.js';
import { derivedStep, given, type Step, withWorking, type Worked } from '../working.js';
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
import { readGrid, type GridInput } from './read-depth-grid.js';
import { readPlane, type ReadPlane, type SitePlaneInput } from './read-site-design.js';
import { makeFrame, type SiteFrame } from './site-frame.js';
import { inState, type StateVolume } from './state-volume.js';

export type { GridDepth } from './grid-sums.js';

/** A grid of spot heights or depths, and the area to dig. */
export interface GridVolumesOptions {
  /**
   * Depths, + if the existing surface is above the design; or give `heights`. Row 0 is at the origin
   * and the next rows follow along y; columns run along x. Write `null` for a missing depth. No more
   * than 20 000 grid points.
   */
  readonly depths?: GridInput;
  /** Elevations of the existing surface, with `design`; or give `depths`. */
  readonly heights?: GridInput;
  /** The plane to dig or fill to, with `heights`, as in `siteVolumes`. */
  readonly design?: SitePlaneInput;
  /** Spacing of rows and columns [length], more than 0: one for both, or `{ x, y }`. */
  readonly spacing: LengthInput | GridPointInput;
  /** Location of row 0, column 0 [length]. Default: 0, 0. */
  readonly origin?: GridPointInput;
  /** Outline of the dig, as in `outlineArea`. Default: all cells. */
  readonly outline?: OutlineInput;
}

/** A length along x and one along y. */
export interface GridPointInput {
  /** Along x, from column to column [length]. */
  readonly x: LengthInput;
  /** Along y, from row to row [length]. */
  readonly y: LengthInput;
}

interface Plan {
  readonly x: Length;
  readonly y: Length;
}

const apart: Field<Plan> = object(
  shapeOf<GridPointInput>()({ x: quantity(DISTANCE), y: quantity(DISTANCE) }),
);

const spacingField: Field<Plan> = custom((reader, value, path) => {
  const isPair = typeof value === 'object' && value !== null && ('x' in value || 'y' in value);
  if (isPair) return apart.read(reader, value, path);
  const both = quantity(DISTANCE).read(reader, value, path);
  return { x: both, y: both };
});

const gridField = custom(readGrid);

const LEVEL_PLANE: ReadPlane = { kind: 'plane', z0: NO_LENGTH, gradeX: NO_SLOPE, gradeY: NO_SLOPE };

const OPTIONS = shapeOf<GridVolumesOptions>()({
  depths: optional(gridField),
  heights: optional(gridField),
  design: optional(
    custom((reader, value, path) => {
      const before = reader.faults();
      const fields = reader.object(value, path);
      return reader.faults() > before ? LEVEL_PLANE : readPlane(reader, fields);
    }),
  ),
  spacing: spacingField,
  origin: optional(object(shapeOf<GridPointInput>()({ x: quantity(PLACE), y: quantity(PLACE) })), {
    x: NO_LENGTH,
    y: NO_LENGTH,
  }),
  outline: optional(custom(readOutline)),
});

const oneSurface: Check<typeof OPTIONS> = (reader, _, path, raw) => {
  const which = exactlyOne(reader, raw, ['depths', 'heights'], path);
  if (which === 'depths' && raw['design'] !== undefined) {
    const message = 'depths are measured from the design already. Give a design with heights only';
    reader.fail('CONFLICTING_FIELDS', ['design'], message, { choices: 'depths, design' });
  }
  if (which === 'heights' && raw['design'] === undefined) {
    reader.fail(
      'REQUIRED',
      ['design'],
      'missing. Write { "z0": "30 m", "gradeX": "0%", "gradeY": "2%" }',
    );
  }
};

/** Cut and fill over a grid of depths. */
export interface GridVolumes extends Cautioned, Worked {
  /** Soil to dig, in place. */
  readonly cut: StateVolume<'bank'>;
  /** Soil to fill, compacted. */
  readonly fill: StateVolume<'compacted'>;
  /** Cut less fill, both as measured on the site. */
  readonly net: Volume;
  /** Area of cut. */
  readonly cutArea: Area;
  /** Area of fill. */
  readonly fillArea: Area;
  /** Area of the cells and parts of cells that were counted. */
  readonly area: Area;
  /** Area of the outline outside the cells; nothing is counted there. */
  readonly uncoveredArea: Area;
  /** True if the cells cover the whole outline, or no outline was given. */
  readonly isCovered: boolean;
  /** Net volume over the area, + for cut. */
  readonly meanDepth: Length;
  /** Number of cells counted. */
  readonly cells: {
    /** Cells counted whole. */
    readonly whole: number;
    /** Cells cut by the outline. */
    readonly partial: number;
    /** Whole cells with both cut and fill. */
    readonly mixed: number;
  };
  /** Grid points with a depth that are not a corner of any cell; they are not counted. */
  readonly unusedPlaces: number;
  /** Corner with the deepest cut among the cells counted; null if there is no cut. */
  readonly deepestCut: GridDepth | null;
  /** Corner with the deepest fill among the cells counted; null if there is no fill. */
  readonly deepestFill: GridDepth | null;
}

/**
 * Cut and fill over a grid of spot heights. Each cell counts as `V = A (d1 + d2 + d3 + d4) / 4`, which
 * is exact for a surface that is straight along and across between the corners. Cells with both cut
 * and fill are split along their zero line, and cells at the outline are cut by it (both in floats, to
 * 12 digits, arcs as chords). Cells with a corner missing are not counted.
 *
 * @param options - see {@link GridVolumesOptions}; `{ unit, rows }` or rows of lengths
 * @returns bank cut, compacted fill, net, areas, mean depth, counts of cells, deepest corners
 * @throws `COUNT_MISMATCH`, `TOO_FEW`, `SURFACES_APART`, `CONFLICTING_FIELDS`, `NOT_POSITIVE`,
 *   `OUT_OF_RANGE`, `TOO_MANY`, the codes of `outlineArea` and the reading codes
 * @source derived
 * @example
 * const pit = gridVolumes({
 *   depths: { unit: 'm', rows: [[0.4, 0.3, 0.2], [0.4, 0.3, 0.2], [null, 0.5, 0.4]] },
 *   spacing: '5 m',
 * });
 * pit.cut.to('m3').toString() //=> '23.75'
 * pit.cells.whole //=> 3
 */
export function gridVolumes(options: GridVolumesOptions): GridVolumes {
  const read = readOptions(options, OPTIONS, oneSurface);
  const { origin, spacing, outline, design } = read;
  const grid = known(read.depths ?? read.heights, 'grid');
  const place = { origin, spacing };
  const depths = design === undefined ? grid.rows : depthsUnder(grid.rows, design, place);
  const cells = cellsOf(depths);
  if (cells.length === 0) {
    const which = read.depths === undefined ? 'heights' : 'depths';
    throw fault(
      'TOO_FEW',
      'no cell has all four corners. Give the depths of at least one full cell',
      {},
      [which],
    );
  }
  const frame = makeFrame({ ...origin, z: NO_LENGTH }, grid.unit);
  const clipped = outline && clipCells(cells, outline, { ...place, unit: frame.unit });
  if (clipped !== undefined && clipped.whole.length + clipped.partial.length === 0) {
    const message =
      'no cell of the grid overlaps the outline. Check the origin, the spacing and the unit';
    throw fault('SURFACES_APART', message, {}, ['outline']);
  }
  const used = new Set(cells.flatMap(({ row, column }) => cornersOf(row, column).map(String)));
  const given = depths.flat().filter((depth) => depth !== null).length;
  const cellArea = spacing.x.times(spacing.y);
  return describe({ cells, clipped, cellArea, frame, unused: given - used.size });
}

type Rows = readonly (readonly (Length | null)[])[];

/** Height of each point above the plane. */
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

/** Share of the area of an outline that its parts may miss by rounding. */
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
  const area = cellArea.times(whole.length).plus(parts ? inCells(parts.area) : NO_AREA);
  const missing = outlineArea - whole.length - (parts?.area ?? 0);
  const isCovered = missing <= ROUNDING * outlineArea;
  const found = {
    cut: inState(cut, 'bank'),
    fill: inState(fill, 'compacted'),
    net,
    cutArea: inCells(sums.cutCells),
    fillArea: inCells(sums.fillCells),
    area,
    uncoveredArea: isCovered ? NO_AREA : inCells(missing),
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
    cellsStep({ what: 'cut', cellArea, each: [...each, atOutline], volume: cut }),
    cellsStep({ what: 'fill', cellArea, each: [...each, atOutline], volume: fill }),
    derivedStep({
      title: 'Cut and fill over a grid',
      formula: 'N = C - F',
      given: [given('C', 'cut, bank', cut), given('F', 'fill, compacted', fill)],
      result: given('N', 'net', net),
    }),
  ]);
}

const cellsStep = ({
  what,
  cellArea,
  each,
  volume,
}: {
  readonly what: 'cut' | 'fill';
  readonly cellArea: Area;
  readonly each: readonly CellSums[];
  readonly volume: Volume;
}): Step =>
  derivedStep({
    title: what === 'cut' ? 'Cut of all cells' : 'Fill of all cells',
    formula: 'V = A * sum(d)',
    given: [
      given('A', 'area of a cell', cellArea),
      given(
        'd',
        `mean ${what} over each whole cell, then of all parts of cells at the outline together`,
        each.map((sums) => sums[what]),
      ),
    ],
    result: given('V', what === 'cut' ? 'cut, bank' : 'fill, compacted', volume),
  });
