import { fault } from '../errors.js';
import { heightOn } from './surface/height-on.js';
import { insideOutline, type InsideOutline } from './surface/inside-outline.js';
import { meshOutline, readRings, type OutlineMesh } from './surface/outline-mesh.js';
import { cutToTriangle, makePiece, setTriangle, type Piece } from './surface/piece.js';
import { originOf, readSurface, type Origin } from './surface/read-surface.js';
import { makeTally, type Depth, type Tally } from './surface/tally.js';
import { areaOf, corner, type Surface } from './surface/triangulation.js';
import { at } from './surface/typed.js';
import { walkPairs } from './surface/walk-pairs.js';

export type { Depth } from './surface/tally.js';

/** A design plane in metres: `z = z0 + gradeX x + gradeY y`. */
export interface DesignPlane {
  /** Elevation at x = y = 0. */
  readonly z0: number;
  /** Rise over run along x and y. */
  readonly gradeX: number;
  readonly gradeY: number;
}

/** Cut and fill between two surfaces, in metres, square metres and cubic metres. */
export interface SurfaceVolumes {
  /** Volume where the existing surface is above the design, in place. */
  readonly cut: number;
  /** Volume where it is below, in place; not negative. */
  readonly fill: number;
  /** Cut less fill. */
  readonly net: number;
  readonly cutArea: number;
  readonly fillArea: number;
  /** What was compared: where both surfaces are, inside the outline. */
  readonly area: number;
  /** Area of the outline without a surface; what is missing to 1e-9 of the outline is rounding. */
  readonly uncoveredArea: number;
  /** The deepest cut and fill, not negative, and where; null where there is none. */
  readonly deepestCut: Depth | null;
  readonly deepestFill: Depth | null;
}

/** Of the area of an outline: what triangles may miss by rounding. */
const ROUNDING = 1e-9;

/**
 * Cut and fill between existing spot heights and a design, over the triangles between the points
 * (Delaunay) and, if an outline is given, inside it: `cut = integral of max(existing - design, 0)`,
 * `fill` likewise below. Each triangle is split exactly along the line of no depth; the triangles of
 * two surfaces are laid over each other. Coordinates are taken from a point of the data: at
 * 500 000 / 4 500 000 m nothing is lost. Relative error some 1e-13 for a million points; time
 * n log n.
 *
 * @param options.existing - spot heights [metres], `x0, y0, z0, x1 ...`, 3 to 50 million points in
 *   any order; points that repeat another are left out
 * @param options.design - a plane [metres; `z0` its elevation at x = y = 0], or spot heights as above
 * @param options.outline - a ring [metres] `x0, y0, x1 ...`, concave or not, in either direction,
 *   closed by itself; or a list of it and the rings of its holes
 * @returns cut, fill and net [m3], their areas, the area compared and the part of the outline that no
 *   surface covers [m2], the deepest cut and fill with their places [metres]
 * @throws `WRONG_TYPE`, `NOT_FINITE`, `OUT_OF_RANGE`, `TOO_FEW_POINTS`, `CAPACITY_EXCEEDED`,
 *   `POINTS_COLLINEAR`, `TWO_HEIGHTS`, `SELF_INTERSECTION`, `ZERO_AREA`, `HOLE_OUTSIDE`,
 *   `SURFACES_APART`
 * @source derived
 * @example
 * const existing = Float64Array.of(0, 0, 1, 6, 0, 1, 6, 4, 1, 0, 4, 1);
 * const dig = surfaceVolumes({ existing, design: { z0: 0.5, gradeX: 0, gradeY: 0 } });
 * dig.cut //=> 12
 * dig.fillArea //=> 0
 */
export function surfaceVolumes(options: {
  readonly existing: Float64Array;
  readonly design: DesignPlane | Float64Array;
  readonly outline?: Float64Array | readonly Float64Array[];
}): SurfaceVolumes {
  const { existing, design, outline } = options;
  const origin = originOf(existing);
  const rings = outline === undefined ? undefined : readRings(outline, origin);
  const plane = design instanceof Float64Array ? undefined : readPlane(design, origin);
  const surface = readSurface(existing, 'existing', origin);
  const other = design instanceof Float64Array ? readSurface(design, 'design', origin) : undefined;
  const mesh = (main: Surface) => rings && meshOutline(rings, [main.xy]);

  const tally = makeTally();
  if (plane !== undefined) {
    compareWithPlane(surface, plane, mesh(surface), tally);
  } else if (other !== undefined) {
    compareSurfaces(surface, other, mesh, tally);
  }
  const { area, ...totals } = tally.totals();
  if (!(area > 0)) {
    const words =
      rings === undefined
        ? 'the two surfaces share no area'
        : 'the surface does not reach into the outline';
    throw fault('SURFACES_APART', words);
  }
  const missing = rings === undefined ? 0 : rings.area - area;
  const placed = (depth: Depth | null) =>
    depth && { depth: depth.depth, x: depth.x + origin.x, y: depth.y + origin.y };
  return Object.freeze({
    ...totals,
    net: totals.cut - totals.fill,
    area,
    uncoveredArea: rings !== undefined && missing > ROUNDING * rings.area ? missing : 0,
    deepestCut: placed(totals.deepestCut),
    deepestFill: placed(totals.deepestFill),
  });
}

/** The plane seen from the origin. */
function readPlane(design: unknown, origin: Origin): DesignPlane {
  if (typeof design !== 'object' || design === null) {
    const words = 'expected a plane { z0, gradeX, gradeY } or a Float64Array of points';
    throw fault('WRONG_TYPE', words, {}, ['design']);
  }
  const read = (field: 'z0' | 'gradeX' | 'gradeY'): number => {
    const value = (design as Readonly<Record<string, unknown>>)[field];
    if (typeof value !== 'number') {
      throw fault('WRONG_TYPE', 'expected a number', {}, ['design', field]);
    }
    if (Number.isFinite(value) && Math.abs(value) <= 1e8) return value;
    const code = Number.isFinite(value) ? 'OUT_OF_RANGE' : 'NOT_FINITE';
    throw fault(code, `${value} is no level or grade of a site`, {}, ['design', field]);
  };
  const [z0, gradeX, gradeY] = [read('z0'), read('gradeX'), read('gradeY')];
  return { z0: z0 + gradeX * origin.x + gradeY * origin.y, gradeX, gradeY };
}

function compareWithPlane(
  surface: Surface,
  { z0, gradeX, gradeY }: DesignPlane,
  mesh: OutlineMesh | undefined,
  tally: Tally,
): void {
  const { xy, z } = surface;
  const depths = new Float64Array(z.length);
  for (let k = 0; k < z.length; k += 1) {
    depths[k] = at(z, k) - (z0 + gradeX * at(xy, 2 * k) + gradeY * at(xy, 2 * k + 1));
  }
  const clip = mesh && insideOutline(surface, mesh);
  const [piece, to, spare] = [makePiece(), makePiece(), makePiece()];
  for (let i = 0; i < surface.triangles.length / 3; i += 1) {
    const place = clip === undefined ? 'inside' : clip.place(i);
    if (place === 'inside') addTriangle(surface, i, depths, tally);
    if (place !== 'cut' || clip === undefined || mesh === undefined) continue;
    setTriangle(piece, surface, i, depths);
    for (const cell of clip.cells()) {
      cutToTriangle(piece, mesh, cell, { to, spare });
      tally.piece(to);
    }
  }
}

function addTriangle(surface: Surface, i: number, depths: Float64Array, tally: Tally): void {
  const { xy } = surface;
  const [a, b, c] = [corner(surface, i, 0), corner(surface, i, 1), corner(surface, i, 2)];
  tally.triangle(areaOf(surface, i), at(depths, a), at(depths, b), at(depths, c));
  tally.depth(at(depths, a), at(xy, 2 * a), at(xy, 2 * a + 1));
  tally.depth(at(depths, b), at(xy, 2 * b), at(xy, 2 * b + 1));
  tally.depth(at(depths, c), at(xy, 2 * c), at(xy, 2 * c + 1));
}

/** Goes through the surface with more triangles, each with the few of the other that it meets. */
function compareSurfaces(
  existing: Surface,
  design: Surface,
  meshFor: (main: Surface) => OutlineMesh | undefined,
  tally: Tally,
): void {
  const isExistingFiner = existing.triangles.length >= design.triangles.length;
  const [main, other] = isExistingFiner ? [existing, design] : [design, existing];
  const mesh = meshFor(main);
  const clip = mesh && insideOutline(main, mesh);
  const [piece, shared, spare, cut] = [makePiece(), makePiece(), makePiece(), makePiece()];
  walkPairs(main, other, (i, overlapped) => {
    const place = clip === undefined ? 'inside' : clip.place(i);
    if (place === 'outside') return;
    setTriangle(piece, main, i, main.z);
    for (const j of overlapped) {
      cutToTriangle(piece, other, j, { to: shared, spare });
      subtract(shared, other, j, isExistingFiner ? 1 : -1);
      if (place === 'inside') tally.piece(shared);
      else addCells(shared, clip, mesh, { to: cut, spare, tally });
    }
  });
}

/** Puts depths in the place of the heights of the main surface. */
function subtract({ values, count }: Piece, other: Surface, j: number, sign: 1 | -1): void {
  for (let p = 0; p < 3 * count; p += 3) {
    const height = heightOn(other, j, at(values, p), at(values, p + 1));
    values[p + 2] = sign * (at(values, p + 2) - height);
  }
}

function addCells(
  shared: Piece,
  clip: InsideOutline | undefined,
  mesh: OutlineMesh | undefined,
  room: { readonly to: Piece; readonly spare: Piece; readonly tally: Tally },
): void {
  if (clip === undefined || mesh === undefined) return;
  for (const cell of clip.cells()) {
    cutToTriangle(shared, mesh, cell, room);
    room.tally.piece(room.to);
  }
}
