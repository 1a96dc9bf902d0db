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

/** The shares of a straight line between which it runs through a box; none where they do not rise. */
function sharesIn(
  [ax, ay]: Point,
  [bx, by]: Point,
  { x, y, width, height }: Box,
): readonly [number, number] {
  let from = 0;
  let to = 1;
  const cut = (start: number, end: number): void => {
    if (start < 0) from = Math.max(from, end < 0 ? Infinity : start / (start - end));
    else if (end < 0) to = Math.min(to, start / (start - end));
  };
  cut(ax - x, bx - x);
  cut(x + width - ax, x + width - bx);
  cut(ay - y, by - y);
  cut(y + height - ay, y + height - by);
  return [from, to];
}

/** True where a straight line runs through a box. Internal. */
export function crosses([a, b]: readonly [Point, Point], box: Box): boolean {
  const [from, to] = sharesIn(a, b, box);
  return from < to;
}

/** The place at a share of a straight line. Internal. */
export const along = (a: Point, b: Point, share: number): Point => [
  a[0] + (b[0] - a[0]) * share,
  a[1] + (b[1] - a[1]) * share,
];

/** The part of a straight line that lies in a box: one, or none. Internal. */
export function clipLine(a: Point, b: Point, box: Box): (readonly [Point, Point])[] {
  const [from, to] = sharesIn(a, b, box);
  return from > to ? [] : [[from === 0 ? a : along(a, b, from), to === 1 ? b : along(a, b, to)]];
}
