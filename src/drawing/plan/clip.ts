import { along, clipLine, type Box } from '../frame/box.js';
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
    const before = points[(index + points.length - 1) % points.length] ?? point;
    const [to, from] = [side(point), side(before)];
    const crossing = to >= 0 === from >= 0 ? [] : [along(before, point, from / (from - to))];
    return to >= 0 ? [...crossing, point] : crossing;
  });
}

/** The parts of a closed line that lie in a box, each from point to point. Internal. */
export function clipRing(points: readonly Point[], box: Box): readonly (readonly Point[])[] {
  const runs: Point[][] = [];
  points.forEach((point, index) => {
    const part = clipLine(point, points[(index + 1) % points.length] ?? point, box);
    if (part === null) return;
    const [from, to] = part;
    const run = runs.at(-1);
    const [x, y] = run?.at(-1) ?? [Infinity, Infinity];
    if (run !== undefined && x === from[0] && y === from[1]) run.push(to);
    else runs.push([from, to]);
  });
  return runs;
}
