import type { Point } from '../svg/shapes.js';

/** True for a point inside a closed figure. Internal. */
export function isInRing(ring: readonly Point[], [px, py]: Point): boolean {
  let isInside = false;
  let [bx, by] = ring.at(-1) ?? [0, 0];
  for (const [x, y] of ring) {
    if (y > py !== by > py && px < x + ((py - y) / (by - y)) * (bx - x)) isInside = !isInside;
    bx = x;
    by = y;
  }
  return isInside;
}
