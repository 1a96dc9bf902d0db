import { corner, inner, type Triangulation } from './triangulation.js';
import { at } from './typed.js';

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
  let least: 0 | 1 = 1;
  for (let k = 0; k < 3; k += 1) {
    const [from, to] = [corner(a, i, k), corner(a, i, (k + 1) % 3)];
    let most = -1;
    for (let c = 0; c < 3 && most < 1; c += 1) {
      const p = corner(b, j, c);
      const side = inner(a, from, to, at(b.xy, 2 * p), at(b.xy, 2 * p + 1));
      most = Math.max(most, side > 0 ? 1 : side < 0 ? -1 : 0);
    }
    if (most < 0) return -1;
    if (most === 0) least = 0;
  }
  return least;
}
