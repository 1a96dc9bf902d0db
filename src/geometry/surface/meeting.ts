import { corner, inner, type Triangulation } from './triangulation.js';
import { at } from '../floats.js';

/**
 * How two triangles lie in plan: 1 where they share some area, 0 where they only touch, -1 apart.
 * Two triangles are apart where an edge of one has the other wholly outside; exact. Internal.
 */
export function meeting(a: Triangulation, i: number, b: Triangulation, j: number): -1 | 0 | 1 {
  const one = parted(a, i, b, j);
  return one < 0 ? one : (Math.min(one, parted(b, j, a, i)) as -1 | 0 | 1);
}

/** The least that the edges of triangle i say about triangle j. */
function parted(a: Triangulation, i: number, b: Triangulation, j: number): -1 | 0 | 1 {
  const p0 = 2 * corner(b, j, 0);
  const p1 = 2 * corner(b, j, 1);
  const p2 = 2 * corner(b, j, 2);
  let least: 0 | 1 = 1;
  for (let k = 0; k < 3; k += 1) {
    const from = corner(a, i, k);
    const to = corner(a, i, k === 2 ? 0 : k + 1);
    const first = inner(a, from, to, at(b.xy, p0), at(b.xy, p0 + 1));
    if (first > 0) continue;
    const second = inner(a, from, to, at(b.xy, p1), at(b.xy, p1 + 1));
    if (second > 0) continue;
    const third = inner(a, from, to, at(b.xy, p2), at(b.xy, p2 + 1));
    if (third > 0) continue;
    if (first < 0 && second < 0 && third < 0) return -1;
    least = 0;
  }
  return least;
}
