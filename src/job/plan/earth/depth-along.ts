import { entry } from '../../../invariant.js';
import { chordsOf } from '../../../outline/chords.js';
import { ringsOf, type Outline } from '../../../outline/ring.js';
import { max } from '../../../units/aggregate.js';
import { fromNumber } from '../../../units/construct.js';
import type { Length } from '../../../units/quantity.js';
import { roughNumber } from '../../../units/ratio.js';
import { between, type PlanPoint } from '../../../units/vector.js';
import { insideOf } from '../areas/in-dig.js';

/** Places along a line are this close [metres], and no more than so many on a stretch of it. */
const STEP = 0.1;
const MOST_STEPS = 200;

/** What is known of the depth of a dig. Internal. */
export interface DepthsOfDig {
  /** Mean depth, where nothing better is known. */
  readonly dig: { readonly depth: Length };
  /** Depth at a place; null where levels do not reach. */
  readonly depthAt: (place: PlanPoint) => Length | null;
}

/**
 * The deepest dig along the part of a line that lies in it, its crossings with the edge counted. The
 * mean depth where no part of its centre line lies in the dig, or no level reaches that part. Internal.
 */
export function depthAlong(
  path: readonly PlanPoint[],
  outline: Outline,
  { dig, depthAt }: DepthsOfDig,
): Length {
  const depths = placesInside(path, outline).flatMap((place) => depthAt(place) ?? []);
  return depths.length === 0 ? dig.depth : max(depths);
}

/** Places of a line inside an outline: its points, its crossings, and steps between. Internal. */
export function placesInside(path: readonly PlanPoint[], outline: Outline): PlanPoint[] {
  const isInside = insideOf(outline);
  const sides = sidesOf(outline);
  return path.slice(1).flatMap((to, index) => {
    const from = entry(path, index);
    const [start, end] = [placeFrom(outline, from), placeFrom(outline, to)];
    const at = (share: number): PlanPoint => ({
      x: outline.origin.x.plus(fromNumber(start.x + (end.x - start.x) * share, 'm')),
      y: outline.origin.y.plus(fromNumber(start.y + (end.y - start.y) * share, 'm')),
    });
    const marks = [0, ...crossings(start, end, sides), 1].sort((a, b) => a - b);
    return marks.slice(1).flatMap((last, k) => {
      const first = entry(marks, k);
      if (last - first < 1e-12 || !isInside(at((first + last) / 2))) return [];
      const length = Math.hypot(end.x - start.x, end.y - start.y) * (last - first);
      const count = Math.min(MOST_STEPS, Math.max(1, Math.ceil(length / STEP)));
      return Array.from({ length: count + 1 }, (_, i) => at(first + ((last - first) * i) / count));
    });
  });
}

interface Place {
  readonly x: number;
  readonly y: number;
}

function placeFrom({ origin }: Outline, place: PlanPoint): Place {
  const { x, y } = between(origin, place);
  return { x: roughNumber(x), y: roughNumber(y) };
}

function sidesOf(outline: Outline): (readonly [Place, Place])[] {
  return ringsOf(outline).flatMap((ring, index) => {
    const points = chordsOf(ring, index > 0).points.map(({ x, y }): Place => ({
      x: roughNumber(x),
      y: roughNumber(y),
    }));
    return points.map((from, k) => [from, entry(points, (k + 1) % points.length)] as const);
  });
}

/** Where a stretch crosses sides, as shares of it. */
function crossings(a: Place, b: Place, sides: readonly (readonly [Place, Place])[]): number[] {
  return sides.flatMap(([c, d]) => {
    const [ax, ay, sx, sy] = [b.x - a.x, b.y - a.y, d.x - c.x, d.y - c.y];
    const turn = ax * sy - ay * sx;
    if (turn === 0) return [];
    const share = ((c.x - a.x) * sy - (c.y - a.y) * sx) / turn;
    const along = ((c.x - a.x) * ay - (c.y - a.y) * ax) / turn;
    const isCrossing = share > 0 && share < 1 && along >= 0 && along <= 1;
    return isCrossing ? [share] : [];
  });
}
