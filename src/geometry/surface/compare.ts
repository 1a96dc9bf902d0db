import { fault } from '../../errors.js';
import { heightOn } from './height-on.js';
import { insideOutline, type InsideOutline } from './inside-outline.js';
import { meshOutline, type OutlineMesh, type Rings } from './outline-mesh.js';
import { cutToTriangle, makePiece, setTriangle, type Piece } from './piece.js';
import { makeTally, type Depth, type Tally } from './tally.js';
import { areaOf, corner, type Surface } from './triangulation.js';
import { at } from '../floats.js';
import { walkPairs } from './walk-pairs.js';

/** A plane `z = z0 + gradeX x + gradeY y`. Internal. */
export interface LocalPlane {
  readonly z0: number;
  readonly gradeX: number;
  readonly gradeY: number;
}

/** Cut and fill, in the unit of the surfaces, places seen from their origin. Internal. */
export interface Compared {
  readonly cut: number;
  readonly fill: number;
  readonly cutArea: number;
  readonly fillArea: number;
  readonly area: number;
  readonly uncoveredArea: number;
  readonly deepestCut: Depth | null;
  readonly deepestFill: Depth | null;
}

/** Of the area of an outline: what triangles may miss by rounding. */
const ROUNDING = 1e-9;

/** Cut and fill between a surface and a design that have one origin. Internal. */
export function compare(
  existing: Surface,
  design: Surface | LocalPlane,
  rings: Rings | undefined,
): Compared {
  const tally = makeTally();
  if ('gradeX' in design) compareWithPlane(existing, design, rings, tally);
  else compareSurfaces(existing, design, rings, tally);
  const totals = tally.totals();
  if (!(totals.area > 0)) {
    const words =
      rings === undefined
        ? 'the two surfaces share no area'
        : 'nothing was measured in the outline';
    throw fault('SURFACES_APART', words, {}, [rings === undefined ? 'design' : 'outline']);
  }
  const missing = rings === undefined ? 0 : rings.area - totals.area;
  const uncoveredArea = rings !== undefined && missing > ROUNDING * rings.area ? missing : 0;
  return { ...totals, uncoveredArea };
}

/** Of the size of two heights: a difference that their rounding can make is neither cut nor fill. */
const NO_DEPTH = 16 * Number.EPSILON;

function compareWithPlane(
  surface: Surface,
  { z0, gradeX, gradeY }: LocalPlane,
  rings: Rings | undefined,
  tally: Tally,
): void {
  const { xy, z } = surface;
  const depths = new Float64Array(z.length);
  for (let k = 0; k < z.length; k += 1) {
    const alongX = gradeX * at(xy, 2 * k);
    const alongY = gradeY * at(xy, 2 * k + 1);
    const depth = at(z, k) - (z0 + alongX + alongY);
    const size = Math.abs(at(z, k)) + Math.abs(z0) + Math.abs(alongX) + Math.abs(alongY);
    depths[k] = Math.abs(depth) <= NO_DEPTH * size ? 0 : depth;
  }
  if (rings === undefined) addAll(surface, depths, tally);
  else addInside(surface, depths, rings, tally);
}

/** Adds every triangle, its area worked out in place: most of a million points goes this way. */
function addAll({ xy, triangles }: Surface, depths: Float64Array, tally: Tally): void {
  for (let k = 0; k < depths.length; k += 1) {
    tally.depth(at(depths, k), at(xy, 2 * k), at(xy, 2 * k + 1));
  }
  for (let i = 0; i < triangles.length; i += 3) {
    const a = triangles[i] ?? 0;
    const b = triangles[i + 1] ?? 0;
    const c = triangles[i + 2] ?? 0;
    const [x, y] = [at(xy, 2 * a), at(xy, 2 * a + 1)];
    const double =
      (at(xy, 2 * b) - x) * (at(xy, 2 * c + 1) - y) - (at(xy, 2 * b + 1) - y) * (at(xy, 2 * c) - x);
    tally.triangle(Math.abs(double) / 2, at(depths, a), at(depths, b), at(depths, c));
  }
}

function addInside(surface: Surface, depths: Float64Array, rings: Rings, tally: Tally): void {
  const clip = makeClip(surface, rings);
  const [piece, to, spare] = [makePiece(), makePiece(), makePiece()];
  for (let i = 0; i < surface.triangles.length / 3; i += 1) {
    const place = clip.inside.place(i);
    if (place === 'inside') addTriangle(surface, i, depths, tally);
    if (place !== 'cut') continue;
    setTriangle(piece, surface, i, depths);
    addCells(piece, clip, { to, spare, tally });
  }
}

interface Clip {
  readonly mesh: OutlineMesh;
  readonly inside: InsideOutline;
}

function makeClip(surface: Surface, rings: Rings): Clip {
  const mesh = meshOutline(rings, surface.xy);
  return { mesh, inside: insideOutline(surface, mesh) };
}

function addTriangle(surface: Surface, i: number, depths: Float64Array, tally: Tally): void {
  const { xy } = surface;
  const a = corner(surface, i, 0);
  const b = corner(surface, i, 1);
  const c = corner(surface, i, 2);
  tally.triangle(areaOf(surface, i), at(depths, a), at(depths, b), at(depths, c));
  tally.depth(at(depths, a), at(xy, 2 * a), at(xy, 2 * a + 1));
  tally.depth(at(depths, b), at(xy, 2 * b), at(xy, 2 * b + 1));
  tally.depth(at(depths, c), at(xy, 2 * c), at(xy, 2 * c + 1));
}

/** Goes through the surface with more triangles, each with the few of the other that it meets. */
function compareSurfaces(
  existing: Surface,
  design: Surface,
  rings: Rings | undefined,
  tally: Tally,
): void {
  const isExistingFiner = existing.triangles.length >= design.triangles.length;
  const [main, other] = isExistingFiner ? [existing, design] : [design, existing];
  const least = NO_DEPTH * (largest(main.z) + largest(other.z));
  const clip = rings && makeClip(main, rings);
  const [piece, shared, to, spare] = [makePiece(), makePiece(), makePiece(), makePiece()];
  walkPairs(main, other, (i, overlapped) => {
    const place = clip === undefined ? 'inside' : clip.inside.place(i);
    if (place === 'outside') return;
    setTriangle(piece, main, i, main.z);
    for (const j of overlapped) {
      cutToTriangle(piece, other, j, { to: shared, spare });
      subtract(shared, other, j, { sign: isExistingFiner ? 1 : -1, least });
      if (place === 'inside') tally.piece(shared);
      else addCells(shared, clip, { to, spare, tally });
    }
  });
}

const largest = (z: Float64Array): number =>
  z.reduce((most, height) => Math.max(most, Math.abs(height)), 0);

/** Puts depths in the place of the heights of the main surface; those up to `least` are none. */
function subtract(
  { values, count }: Piece,
  other: Surface,
  j: number,
  { sign, least }: { readonly sign: 1 | -1; readonly least: number },
): void {
  for (let p = 0; p < 3 * count; p += 3) {
    const depth = at(values, p + 2) - heightOn(other, j, at(values, p), at(values, p + 1));
    values[p + 2] = Math.abs(depth) <= least ? 0 : sign * depth;
  }
}

/** Adds the parts of a piece that lie inside the outline. */
function addCells(
  piece: Piece,
  clip: Clip | undefined,
  room: { readonly to: Piece; readonly spare: Piece; readonly tally: Tally },
): void {
  if (clip === undefined) return;
  for (const cell of clip.inside.cells()) {
    cutToTriangle(piece, clip.mesh, cell, room);
    room.tally.piece(room.to);
  }
}
