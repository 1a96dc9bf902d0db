import { corner, type Triangulation } from './triangulation.js';
import { at } from '../floats.js';

/**
 * A convex piece in plan: x, y and a height of each corner in turn. Pieces live in fixed buffers,
 * so that cutting millions of them makes no garbage. Internal.
 */
export interface Piece {
  readonly values: Float64Array;
  count: number;
}

/** A triangle cut by two triangles has nine corners at most. */
const ROOM = 3 * 16;

/** Makes an empty piece. Internal. */
export const makePiece = (): Piece => ({ values: new Float64Array(ROOM), count: 0 });

/** Sets a piece to a triangle, with a height of each point of its mesh. Internal. */
export function setTriangle(
  piece: Piece,
  mesh: Triangulation,
  triangle: number,
  heights: Float64Array,
): void {
  for (let k = 0; k < 3; k += 1) {
    const point = corner(mesh, triangle, k);
    piece.values[3 * k] = at(mesh.xy, 2 * point);
    piece.values[3 * k + 1] = at(mesh.xy, 2 * point + 1);
    piece.values[3 * k + 2] = at(heights, point);
  }
  piece.count = 3;
}

/**
 * The part of a piece inside a triangle of a mesh, written into `to`; `spare` is worked in. Heights
 * on new corners lie between those of the ends of the edge that is cut. Internal.
 */
export function cutToTriangle(
  piece: Piece,
  mesh: Triangulation,
  triangle: number,
  room: { readonly to: Piece; readonly spare: Piece },
): void {
  const { to, spare } = room;
  cutToSide(piece, to, mesh, triangle, 0);
  cutToSide(to, spare, mesh, triangle, 1);
  cutToSide(spare, to, mesh, triangle, 2);
}

function cutToSide(from: Piece, to: Piece, mesh: Triangulation, triangle: number, k: number): void {
  const { xy } = mesh;
  const a = 2 * corner(mesh, triangle, k);
  const b = 2 * corner(mesh, triangle, k === 2 ? 0 : k + 1);
  const ax = at(xy, a);
  const ay = at(xy, a + 1);
  const dx = at(xy, b) - ax;
  const dy = at(xy, b + 1) - ay;
  const inside = (p: number): number =>
    (at(from.values, p) - ax) * dy - (at(from.values, p + 1) - ay) * dx;

  let count = 0;
  if (from.count > 0) {
    let before = 3 * (from.count - 1);
    let wasInside = inside(before);
    for (let p = 0; p < 3 * from.count; p += 3) {
      const isInside = inside(p);
      if (wasInside < 0 !== isInside < 0) {
        count = put(to, count, from.values, before, p, wasInside / (wasInside - isInside));
      }
      if (isInside >= 0) count = put(to, count, from.values, p, p, 0);
      before = p;
      wasInside = isInside;
    }
  }
  to.count = count;
}

/** Writes the corner a share `t` of the way from corner p to corner q. */
function put(
  to: Piece,
  count: number,
  from: Float64Array,
  p: number,
  q: number,
  t: number,
): number {
  const out = 3 * count;
  for (let k = 0; k < 3; k += 1) {
    const value = at(from, p + k);
    to.values[out + k] = t === 0 ? value : value + t * (at(from, q + k) - value);
  }
  return count + 1;
}
