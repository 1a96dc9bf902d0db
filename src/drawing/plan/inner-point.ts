import { entry, lastOf } from '../../invariant.js';
import { isInRing } from '../frame/is-in-ring.js';
import type { Point } from '../svg/shapes.js';
import { boundsOf } from './plan-view.js';

const CELLS = 15;

/** How much of its clear space a point gives up to lie nearer to the middle. */
const TO_MIDDLE = 0.05;

/** A point of a figure far from its edges and from points that are taken. Internal. */
export function innerPoint(
  rings: readonly (readonly Point[])[],
  taken: readonly Point[] = [],
): Point {
  const { west, east, south, north } = boundsOf(entry(rings, 0));
  const [wide, high] = [(east - west) / CELLS, (north - south) / CELLS];
  const middle: Point = [(west + east) / 2, (south + north) / 2];
  let best = middle;
  let most = -Infinity;
  for (let k = 0; k < CELLS * CELLS; k += 1) {
    const point: Point = [
      west + wide * ((k % CELLS) + 0.5),
      south + high * (Math.floor(k / CELLS) + 0.5),
    ];
    if (!isInRings(rings, point)) continue;
    let clear = Infinity;
    for (const at of taken) clear = Math.min(clear, distanceToLine(at, at, point));
    for (const ring of rings) {
      let before = lastOf(ring);
      for (const at of ring) {
        clear = Math.min(clear, distanceToLine(before, at, point));
        before = at;
      }
    }
    clear -= TO_MIDDLE * distanceToLine(middle, middle, point);
    if (clear > most + 1e-9) [best, most] = [point, clear];
  }
  return best;
}

/** True for a point inside an odd number of rings. Internal. */
export const isInRings = (rings: readonly (readonly Point[])[], point: Point): boolean =>
  rings.filter((ring) => isInRing(ring, point)).length % 2 === 1;

function distanceToLine([x, y]: Point, [bx, by]: Point, [px, py]: Point): number {
  const [dx, dy] = [bx - x, by - y];
  const square = dx * dx + dy * dy;
  const share = square === 0 ? 0 : ((px - x) * dx + (py - y) * dy) / square;
  const near = Math.max(0, Math.min(1, share));
  return Math.sqrt((x + near * dx - px) ** 2 + (y + near * dy - py) ** 2);
}
