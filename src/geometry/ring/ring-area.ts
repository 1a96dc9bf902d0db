import { requireFinite, requireRing } from './ring-points.js';

/**
 * Area of a ring of many points, in floats: `2A = |sum(x(i) y(i+1) - x(i+1) y(i))|` with the origin
 * at the first point, so large coordinates lose no digits. The error is below `n D^2 1e-16` for n
 * points in a square of side D, and far less in practice.
 *
 * The last point joins the first. The ring may run either way round, and it is not checked for
 * crossing edges (see {@link ringCrossing}). Points on one line give 0.
 *
 * @param xy - interleaved `x0, y0, x1, y1 ...` [metres], three points or more; not changed
 * @returns the area [m2], not negative
 * @throws `WRONG_TYPE`, `TOO_FEW`, `NOT_FINITE`, `OUT_OF_RANGE`
 * @source derived
 * @example
 * ringArea(Float64Array.of(500000, 4500000, 500003, 4500000, 500000, 4500004)) //=> 6
 */
export function ringArea(xy: Float64Array): number {
  requireRing(xy);
  const count = xy.length;
  const x0 = xy[0] ?? 0;
  const y0 = xy[1] ?? 0;
  let twice = 0;
  let x = 0;
  let y = 0;
  for (let k = 2; k < count; k += 2) {
    const nextX = (xy[k] ?? 0) - x0;
    const nextY = (xy[k + 1] ?? 0) - y0;
    twice += x * nextY - nextX * y;
    x = nextX;
    y = nextY;
  }
  requireFinite(twice, xy);
  return Math.abs(twice) / 2;
}
