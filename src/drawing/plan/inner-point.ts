import { isInRing } from '../frame/is-in-ring.js';
import type { Point } from '../svg/shapes.js';

const CELLS = 15;

/** A point of a figure far from its edges and from points that are taken. Internal. */
export function innerPoint(
  rings: readonly (readonly Point[])[],
  taken: readonly Point[] = [],
): Point {
  const all = rings[0] ?? [];
  const [xs, ys] = [all.map(([x]) => x), all.map(([, y]) => y)];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const [wide, high] = [Math.max(...xs) - left, Math.max(...ys) - top];
  let best: Point = [left + wide / 2, top + high / 2];
  let most = -1;
  for (let k = 0; k < CELLS * CELLS; k += 1) {
    const point: Point = [
      left + (wide * ((k % CELLS) + 0.5)) / CELLS,
      top + (high * (Math.floor(k / CELLS) + 0.5)) / CELLS,
    ];
    if (!isInRings(rings, point)) continue;
    const clear = Math.min(
      ...rings.map((ring) => distanceToRing(ring, point)),
      ...taken.map(([x, y]) => Math.hypot(point[0] - x, point[1] - y)),
    );
    if (clear > most * (1 + 1e-9)) [best, most] = [point, clear];
  }
  return best;
}

/** True for a point inside an odd number of rings. Internal. */
export const isInRings = (rings: readonly (readonly Point[])[], point: Point): boolean =>
  rings.filter((ring) => isInRing(ring, point)).length % 2 === 1;

function distanceToRing(ring: readonly Point[], [px, py]: Point): number {
  const distances = ring.map(([x, y], index) => {
    const [bx, by] = ring[(index + 1) % ring.length] ?? [x, y];
    const [dx, dy] = [bx - x, by - y];
    const square = dx * dx + dy * dy;
    const share = square === 0 ? 0 : ((px - x) * dx + (py - y) * dy) / square;
    const near = Math.max(0, Math.min(1, share));
    return Math.hypot(x + near * dx - px, y + near * dy - py);
  });
  return Math.min(...distances);
}
