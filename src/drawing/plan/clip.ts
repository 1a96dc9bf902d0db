import { along, clipLine, type Box } from '../frame/box.js';
import { sidesOf } from './parts.js';
import type { Point } from '../svg/shapes.js';

/** The part of a closed figure that lies in a box; empty where nothing does. Internal. */
export function clipPolygon(points: readonly Point[], { x, y, width, height }: Box) {
  /** How far inside of each side a point lies. */
  const sides: readonly ((point: Point) => number)[] = [
    ([px]) => px - x,
    ([px]) => x + width - px,
    ([, py]) => py - y,
    ([, py]) => y + height - py,
  ];
  return sides.reduce<readonly Point[]>(
    (rest, side) =>
      rest.flatMap((point, index) => {
        const before = rest.at(index - 1) ?? point;
        const [to, from] = [side(point), side(before)];
        const crossing = to >= 0 === from >= 0 ? [] : [along(before, point, from / (from - to))];
        return to >= 0 ? [...crossing, point] : crossing;
      }),
    points,
  );
}

/** The parts of a closed line that lie in a box, each from point to point. Internal. */
export function clipRing(points: readonly Point[], box: Box): readonly (readonly Point[])[] {
  const runs: Point[][] = [];
  for (const [a, b] of sidesOf(points)) {
    for (const [from, to] of clipLine(a, b, box)) {
      const run = runs.at(-1);
      const [x, y] = run?.at(-1) ?? [];
      if (x === from[0] && y === from[1]) run?.push(to);
      else runs.push([from, to]);
    }
  }
  return runs;
}
