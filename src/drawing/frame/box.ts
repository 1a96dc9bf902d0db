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
  const [ax, ay] = a;
  const [bx, by] = b;
  // most lines lie to one side of the box
  if ((ax < x && bx < x) || (ax > x + width && bx > x + width)) return false;
  if ((ay < y && by < y) || (ay > y + height && by > y + height)) return false;
  let from = 0;
  let to = 1;
  const cut = (start: number, end: number): void => {
    if (start < 0) from = Math.max(from, start / (start - end));
    else if (end < 0) to = Math.min(to, start / (start - end));
  };
  cut(ax - x, bx - x);
  cut(x + width - ax, x + width - bx);
  cut(ay - y, by - y);
  cut(y + height - ay, y + height - by);
  return from < to;
}
