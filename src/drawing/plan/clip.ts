import { entry } from '../../invariant.js';
import type { Box } from '../frame/box.js';
import type { Point } from '../svg/shapes.js';

/** A side of a box: how far inside of it a point lies. */
type Side = (point: Point) => number;

const sidesOf = ({ x, y, width, height }: Box): readonly Side[] => [
  ([px]) => px - x,
  ([px]) => x + width - px,
  ([, py]) => py - y,
  ([, py]) => y + height - py,
];

/** The part of a closed figure that lies in a box; empty where nothing does. Internal. */
export const clipPolygon = (points: readonly Point[], box: Box): readonly Point[] =>
  sidesOf(box).reduce<readonly Point[]>(cutBySide, points);

function cutBySide(points: readonly Point[], side: Side): readonly Point[] {
  return points.flatMap((point, index) => {
    const before = entry(points, (index + points.length - 1) % points.length);
    const [to, from] = [side(point), side(before)];
    const crossing = to >= 0 === from >= 0 ? [] : [along(before, point, from / (from - to))];
    return to >= 0 ? [...crossing, point] : crossing;
  });
}

const along = (a: Point, b: Point, share: number): Point => [
  a[0] + (b[0] - a[0]) * share,
  a[1] + (b[1] - a[1]) * share,
];

/** The part of a straight line that lies in a box; null where none does. Internal. */
export function clipLine(a: Point, b: Point, box: Box): readonly [Point, Point] | null {
  let from = 0;
  let to = 1;
  for (const side of sidesOf(box)) {
    const [start, end] = [side(a), side(b)];
    if (start < 0 && end < 0) return null;
    if (start < 0) from = Math.max(from, start / (start - end));
    else if (end < 0) to = Math.min(to, start / (start - end));
  }
  if (from > to) return null;
  return [from === 0 ? a : along(a, b, from), to === 1 ? b : along(a, b, to)];
}

/** The parts of a closed line that lie in a box, each from point to point. Internal. */
export function clipRing(points: readonly Point[], box: Box): readonly (readonly Point[])[] {
  const runs: Point[][] = [];
  points.forEach((point, index) => {
    const part = clipLine(point, entry(points, (index + 1) % points.length), box);
    if (part === null) return;
    const [from, to] = part;
    const run = runs.at(-1);
    const [x, y] = run?.at(-1) ?? [Infinity, Infinity];
    if (run !== undefined && x === from[0] && y === from[1]) run.push(to);
    else runs.push([from, to]);
  });
  return runs;
}
