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

/** The side that is cut along: a point of it, and the way to the next. */
const SIDE = new Float64Array(4);

function cutToSide(from: Piece, to: Piece, mesh: Triangulation, triangle: number, k: number): void {
  const { xy } = mesh;
  const a = 2 * corner(mesh, triangle, k);
  const b = 2 * corner(mesh, triangle, k === 2 ? 0 : k + 1);
  SIDE[0] = at(xy, a);
  SIDE[1] = at(xy, a + 1);
  SIDE[2] = at(xy, b) - at(xy, a);
  SIDE[3] = at(xy, b + 1) - at(xy, a + 1);
  cutAtSide(from, to);
}

/** What lies to the right of the side: each corner there, and a new one wherever an edge crosses it. */
function cutAtSide({ values, count }: Piece, to: Piece): void {
  const ax = at(SIDE, 0);
  const ay = at(SIDE, 1);
  const dx = at(SIDE, 2);
  const dy = at(SIDE, 3);
  const out = to.values;
  const end = 3 * count;
  let filled = 0;
  let lastX = at(values, end - 3);
  let lastY = at(values, end - 2);
  let lastZ = at(values, end - 1);
  let wasInside = (lastX - ax) * dy - (lastY - ay) * dx;
  for (let p = 0; p < end; p += 3) {
    const x = at(values, p);
    const y = at(values, p + 1);
    const z = at(values, p + 2);
    const isInside = (x - ax) * dy - (y - ay) * dx;
    if (wasInside < 0 !== isInside < 0) {
      const t = wasInside / (wasInside - isInside);
      out[filled] = lastX + t * (x - lastX);
      out[filled + 1] = lastY + t * (y - lastY);
      out[filled + 2] = lastZ + t * (z - lastZ);
      filled += 3;
    }
    if (isInside >= 0) {
      out[filled] = x;
      out[filled + 1] = y;
      out[filled + 2] = z;
      filled += 3;
    }
    lastX = x;
    lastY = y;
    lastZ = z;
    wasInside = isInside;
  }
  to.count = filled / 3;
}
