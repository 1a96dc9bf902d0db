import { entry } from '../invariant.js';
import { chordsOf } from '../outline/chords.js';
import { ringsOf, type Outline } from '../outline/ring.js';
import { fromSI, type Length } from '../units/quantity.js';
import { addPiece, type CellDepths, type Parts } from '../geometry/surface/bilinear.js';
import { insideOutline } from '../geometry/surface/inside-outline.js';
import { meshOutline, readRings } from '../geometry/surface/outline-mesh.js';
import { cutToTriangle, makePiece, setTriangle } from '../geometry/surface/piece.js';
import type { Triangulation } from '../geometry/surface/triangulation.js';

/** A grid cell with all four corners known. Internal. */
export interface Cell {
  readonly row: number;
  readonly column: number;
  /** Corner nearest the origin, then the next along x, the one diagonally across, the next along y. */
  readonly depths: readonly [Length, Length, Length, Length];
}

const isThere = (depth: Length | null | undefined): depth is Length =>
  depth !== null && depth !== undefined;

/** The cells of a grid whose four corners are known. Internal. */
export function cellsOf(rows: readonly (readonly (Length | null)[])[]): readonly Cell[] {
  return rows.slice(1).flatMap((above, row) => {
    const below = entry(rows, row);
    return above.slice(1).flatMap((d11, column): Cell[] => {
      const [d00, d10, d01] = [below[column], below[column + 1], above[column]];
      const isWhole = isThere(d00) && isThere(d10) && isThere(d11) && isThere(d01);
      return isWhole ? [{ row, column, depths: [d00, d10, d11, d01] }] : [];
    });
  });
}

/** The cells of a grid inside an outline. Internal. */
export interface ClippedCells {
  readonly whole: readonly Cell[];
  /** Cells that the outline cuts. */
  readonly partial: readonly Cell[];
  /** Sums over the parts inside, in cells; depths in the unit requested. */
  readonly parts: Parts;
  /** Area of the outline, in cells. */
  readonly outlineArea: number;
}

/** Position and spacing of the grid under an outline. Internal. */
export interface GridPlace {
  readonly origin: { readonly x: Length; readonly y: Length };
  readonly spacing: { readonly x: Length; readonly y: Length };
  readonly unit: 'm' | 'ft';
}

/** Cuts the cells of a grid to an outline. Arcs count as chords. Internal. */
export function clipCells(
  cells: readonly Cell[],
  outline: Outline,
  place: GridPlace,
): ClippedCells {
  const rings = readRings(ringsInCells(outline, place), { x: 0, y: 0 });
  const surface = trianglesOf(cells);
  const mesh = meshOutline(rings, surface.xy);
  const inside = insideOutline(surface, mesh);
  const level = new Float64Array(surface.xy.length / 2);
  const [triangle, piece, spare] = [makePiece(), makePiece(), makePiece()];
  const parts: Parts = { cut: 0, fill: 0, cutArea: 0, fillArea: 0, area: 0 };
  const whole: Cell[] = [];
  const partial: Cell[] = [];
  cells.forEach((cell, k) => {
    const halves = [2 * k, 2 * k + 1];
    const places = halves.map((i) => inside.place(i));
    if (places.every((one) => one === 'inside')) whole.push(cell);
    if (places[0] === places[1] && places[0] !== 'cut') return;
    partial.push(cell);
    const bilinear = { depths: floatDepths(cell, place.unit), u: cell.column, v: cell.row };
    for (const i of halves) {
      const where = inside.place(i);
      setTriangle(triangle, surface, i, level);
      if (where === 'inside') addPiece(parts, triangle, bilinear);
      if (where !== 'cut') continue;
      for (const region of inside.cells()) {
        cutToTriangle(triangle, mesh, region, { to: piece, spare });
        addPiece(parts, piece, bilinear);
      }
    }
  });
  return { whole, partial, parts, outlineArea: rings.area };
}

/** Depths of a cell as floats. Internal. */
export function floatDepths({ depths }: Cell, unit: 'm' | 'ft'): CellDepths {
  const [d00, d10, d11, d01] = depths;
  const float = (depth: Length): number => depth.toNumber(unit);
  return [float(d00), float(d10), float(d11), float(d01)];
}

/** Two triangles for each cell, in cells from the first grid point. */
function trianglesOf(cells: readonly Cell[]): Triangulation {
  const xy = new Float64Array(8 * cells.length);
  const triangles = new Uint32Array(6 * cells.length);
  cells.forEach(({ row, column }, k) => {
    const [west, south, east, north] = [column, row, column + 1, row + 1];
    xy.set([west, south, east, south, east, north, west, north], 8 * k);
    const [a, b, c, d] = [4 * k, 4 * k + 1, 4 * k + 2, 4 * k + 3];
    triangles.set([a, d, b, b, d, c], 6 * k);
  });
  return { xy, triangles, halfedges: new Int32Array(triangles.length).fill(-1) };
}

/** The rings of an outline in cells. Quotients are exact, so grid lines stay grid lines. */
function ringsInCells(outline: Outline, { origin, spacing }: GridPlace): readonly Float64Array[] {
  const [dx, dy] = [outline.origin.x.minus(origin.x), outline.origin.y.minus(origin.y)];
  return ringsOf(outline).map((ring, index) =>
    Float64Array.from(
      chordsOf(ring, index > 0).points.flatMap(({ x, y }) => [
        dx.plus(fromSI('length', x)).dividedBy(spacing.x).toNumber(),
        dy.plus(fromSI('length', y)).dividedBy(spacing.y).toNumber(),
      ]),
    ),
  );
}
