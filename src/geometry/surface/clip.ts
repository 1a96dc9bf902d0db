import { insideOutline, type InsideOutline } from './inside-outline.js';
import { meshOutline, type OutlineMesh, type Rings } from './outline-mesh.js';
import { cutToTriangle, type Piece } from './piece.js';
import type { Tally } from './tally.js';
import { at } from '../floats.js';
import type { Triangulation } from './triangulation.js';

/** An outline laid over the triangles of a surface. Internal. */
export interface Clip {
  readonly mesh: OutlineMesh;
  readonly inside: InsideOutline;
}

/** Lays an outline over the triangles of a surface. Internal. */
export function makeClip(surface: Triangulation, rings: Rings): Clip {
  const mesh = meshOver(surface.xy, rings);
  return { mesh, inside: insideOutline(surface, mesh) };
}

/** The last mesh of an outline, with the points it was laid over. */
const MESHES = new WeakMap<Rings, { readonly over: Float64Array; readonly mesh: OutlineMesh }>();

/** Over the same points at other heights an outline has the same mesh. */
function meshOver(points: Float64Array, rings: Rings): OutlineMesh {
  const known = MESHES.get(rings);
  if (known?.over === points) return known.mesh;
  const mesh = meshOutline(rings, points);
  MESHES.set(rings, { over: points, mesh });
  return mesh;
}

/** Adds the parts of a piece that lie inside the outline. Internal. */
export function addCells(
  piece: Piece,
  clip: Clip,
  room: { readonly to: Piece; readonly spare: Piece; readonly tally: Tally },
): void {
  for (const cell of clip.inside.cells()) {
    cutToTriangle(piece, clip.mesh, cell, room);
    room.tally.piece(room.to);
  }
}

/** Adds what lies between chords and their arcs, at the depth in the middle of each. Internal. */
export function addBows(
  { bows }: Rings,
  depthAt: (x: number, y: number) => number | undefined,
  tally: Tally,
): void {
  for (let k = 0; k < bows.length; k += 3) {
    const depth = depthAt(at(bows, k), at(bows, k + 1));
    if (depth !== undefined) tally.triangle(at(bows, k + 2), depth, depth, depth);
  }
}
