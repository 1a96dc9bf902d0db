// After the package delaunator: its notice is at the head of delaunay.ts.
import { boundsOf } from '../bounds.js';
import { orient2d } from 'robust-predicates';
import { at } from '../floats.js';

/** Three points. Internal. */
export type Seed = readonly [number, number, number];
/** A place in plan. Internal. */
export type Place = readonly [x: number, y: number];

/** A point near the middle, the one nearest to it, and the one of the smallest circle with both. Internal. */
export function seedOf(xy: Float64Array): Seed | undefined {
  const i0 = nearestTo(xy, middleOf(xy), -1);
  const i1 = nearestTo(xy, [at(xy, 2 * i0), at(xy, 2 * i0 + 1)], i0);
  let i2 = 0;
  let least = Infinity;
  for (let i = 0; i < xy.length >> 1; i += 1) {
    if (i === i0 || i === i1) continue;
    const radius = squaredCircumradius(xy, i0, i1, i);
    if (radius < least) {
      i2 = i;
      least = radius;
    }
  }
  if (least === Infinity) return undefined;
  const isTurned = turn(xy, i0, i1, at(xy, 2 * i2), at(xy, 2 * i2 + 1)) < 0;
  return isTurned ? [i0, i2, i1] : [i0, i1, i2];
}

function middleOf(xy: Float64Array): Place {
  const { west, south, east, north } = boundsOf([xy]);
  return [(west + east) / 2, (south + north) / 2];
}

/** The point nearest to a place; where that is a point itself, one that does not repeat it. */
function nearestTo(xy: Float64Array, [x, y]: Place, itself: number): number {
  let nearest = 0;
  let least = Infinity;
  for (let i = 0; i < xy.length >> 1; i += 1) {
    const dx = x - at(xy, 2 * i);
    const dy = y - at(xy, 2 * i + 1);
    const distance = dx * dx + dy * dy;
    if (distance < least && (itself < 0 || (i !== itself && distance > 0))) {
      nearest = i;
      least = distance;
    }
  }
  return nearest;
}

/** The centre of the circle through three points, from the first of them. */
function circleFrom(xy: Float64Array, a: number, b: number, c: number): Place {
  const dx = at(xy, 2 * b) - at(xy, 2 * a);
  const dy = at(xy, 2 * b + 1) - at(xy, 2 * a + 1);
  const ex = at(xy, 2 * c) - at(xy, 2 * a);
  const ey = at(xy, 2 * c + 1) - at(xy, 2 * a + 1);
  const bl = dx * dx + dy * dy;
  const cl = ex * ex + ey * ey;
  const d = 0.5 / (dx * ey - dy * ex);
  return [(ey * bl - dy * cl) * d, (dx * cl - ex * bl) * d];
}

function squaredCircumradius(xy: Float64Array, a: number, b: number, c: number): number {
  const [x, y] = circleFrom(xy, a, b, c);
  return x * x + y * y;
}

/** The centre of the circle through three points. Internal. */
export function circumcentre(xy: Float64Array, [a, b, c]: Seed): Place {
  const [x, y] = circleFrom(xy, a, b, c);
  return [at(xy, 2 * a) + x, at(xy, 2 * a + 1) + y];
}

/** Negative where a point lies outside an edge of the hull, 0 on its line. Internal. */
export const turn = (xy: Float64Array, from: number, to: number, x: number, y: number): number =>
  orient2d(at(xy, 2 * from), at(xy, 2 * from + 1), at(xy, 2 * to), at(xy, 2 * to + 1), x, y);
