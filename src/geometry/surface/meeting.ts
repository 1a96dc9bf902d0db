import { orient2d } from 'robust-predicates';
import type { Triangulation } from './triangulation.js';
import { at } from '../floats.js';

/**
 * Compares one triangle of a mesh after another with triangles of a second mesh. Corners lie in fixed
 * buffers, so that looking at millions of them makes no garbage. Internal.
 */
export interface Meeting {
  /** Takes up triangle i of the first mesh. */
  take(i: number): void;
  /**
   * How triangle j of the second mesh lies to it in plan: 1 where they share some area, 0 where they
   * only touch, -1 apart. Two triangles are apart where an edge of one has the other wholly outside;
   * exact.
   */
  of(j: number): -1 | 0 | 1;
}

/** Prepares to compare triangles of two meshes. Internal. */
export function makeMeeting(a: Triangulation, b: Triangulation): Meeting {
  const taken = new Float64Array(6);
  const other = new Float64Array(6);
  let west = 0;
  let east = 0;
  let south = 0;
  let north = 0;
  return {
    take(i) {
      takeCorners(a, i, taken);
      west = Math.min(at(taken, 0), at(taken, 2), at(taken, 4));
      east = Math.max(at(taken, 0), at(taken, 2), at(taken, 4));
      south = Math.min(at(taken, 1), at(taken, 3), at(taken, 5));
      north = Math.max(at(taken, 1), at(taken, 3), at(taken, 5));
    },
    of(j) {
      takeCorners(b, j, other);
      // most neighbours are told apart by their boxes already
      if (isBeyond(other, 0, west, east) || isBeyond(other, 1, south, north)) return -1;
      const first = parted(taken, other);
      if (first < 0) return first;
      const second = parted(other, taken);
      return second < first ? second : first;
    },
  };
}

function takeCorners({ xy, triangles }: Triangulation, triangle: number, to: Float64Array): void {
  const a = 2 * (triangles[3 * triangle] ?? 0);
  const b = 2 * (triangles[3 * triangle + 1] ?? 0);
  const c = 2 * (triangles[3 * triangle + 2] ?? 0);
  to[0] = at(xy, a);
  to[1] = at(xy, a + 1);
  to[2] = at(xy, b);
  to[3] = at(xy, b + 1);
  to[4] = at(xy, c);
  to[5] = at(xy, c + 1);
}

/** Whether a triangle lies wholly before or behind a stretch of x (0) or y (1). */
function isBeyond(corners: Float64Array, axis: 0 | 1, from: number, to: number): boolean {
  const a = at(corners, axis);
  const b = at(corners, axis + 2);
  const c = at(corners, axis + 4);
  return (a > to && b > to && c > to) || (a < from && b < from && c < from);
}

/** The least that the edges of one triangle say about the corners of another. */
function parted(edges: Float64Array, corners: Float64Array): -1 | 0 | 1 {
  let least: 0 | 1 = 1;
  for (let from = 0; from < 6; from += 2) {
    const first = side(edges, from, corners, 0);
    if (first > 0) continue;
    const second = side(edges, from, corners, 2);
    if (second > 0) continue;
    const third = side(edges, from, corners, 4);
    if (third > 0) continue;
    if (first < 0 && second < 0 && third < 0) return -1;
    least = 0;
  }
  return least;
}

/** What rounding can do to a difference of products, over the sum of their sizes: 3 half units and a bit. */
const ROUNDING = 3.34e-16;

/**
 * 1 where a corner lies on the inner side of an edge, 0 on its line, -1 beyond: exact. Signs are small
 * whole numbers: floats handed back by the million would each be put in memory.
 */
function side(
  edges: Float64Array,
  from: number,
  corners: Float64Array,
  corner: number,
): -1 | 0 | 1 {
  const to = from === 4 ? 0 : from + 2;
  const ax = at(edges, from);
  const ay = at(edges, from + 1);
  const bx = at(edges, to);
  const by = at(edges, to + 1);
  const px = at(corners, corner);
  const py = at(corners, corner + 1);
  const left = (ay - py) * (bx - px);
  const right = (ax - px) * (by - py);
  const turn = left - right;
  const bound = ROUNDING * (Math.abs(left) + Math.abs(right));
  if (turn > bound) return 1;
  if (turn < -bound) return -1;
  const exact = orient2d(ax, ay, bx, by, px, py);
  return exact > 0 ? 1 : exact < 0 ? -1 : 0;
}
