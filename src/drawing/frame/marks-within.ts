import type { Point } from '../svg/shapes.js';
import { isInRing } from './is-in-ring.js';
import type { Stroke } from './lines-across.js';

const TILE = 16;

/**
 * Small marks, repeated in tiles from the top left of a closed figure on: those that lie wholly inside
 * it. Internal.
 */
export function marksWithin(points: readonly Point[], marks: readonly Stroke[]): Stroke[] {
  if (marks.length === 0) return [];
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  const [right, bottom] = [Math.max(...xs), Math.max(...ys)];
  const inside: Stroke[] = [];
  for (let y = Math.min(...ys); y < bottom; y += TILE) {
    for (let x = Math.min(...xs); x < right; x += TILE) {
      for (const mark of marks) {
        const moved = mark.map(([mx, my]): Point => [x + mx, y + my]);
        if (moved.every((point) => isInRing(points, point))) inside.push(moved);
      }
    }
  }
  return inside;
}
