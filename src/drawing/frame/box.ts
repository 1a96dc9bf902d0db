import type { Point } from '../svg/shapes.js';

/** An upright box of a drawing. Internal. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** True where two boxes share more than an edge. Internal. */
export const overlaps = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

/** True where the first box lies inside the second. Internal. */
export const isInside = (a: Box, b: Box): boolean =>
  a.x >= b.x && a.y >= b.y && a.x + a.width <= b.x + b.width && a.y + a.height <= b.y + b.height;

/** True where a straight line runs through a box. Internal. */
export function crosses([a, b]: readonly [Point, Point], { x, y, width, height }: Box): boolean {
  let from = 0;
  let to = 1;
  for (const [start, end] of [
    [a[0] - x, b[0] - x],
    [x + width - a[0], x + width - b[0]],
    [a[1] - y, b[1] - y],
    [y + height - a[1], y + height - b[1]],
  ] as const) {
    if (start < 0 && end < 0) return false;
    if (start < 0) from = Math.max(from, start / (start - end));
    else if (end < 0) to = Math.min(to, start / (start - end));
  }
  return from < to;
}
