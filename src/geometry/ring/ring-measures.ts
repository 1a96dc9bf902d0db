import { fault } from '../../errors.js';
import { requireFinite, requireRing } from './ring-points.js';

/** Area, perimeter and centroid of a ring of many points, in metres. */
export interface RingMeasures {
  /** Area [m2], not negative. */
  readonly area: number;
  /** Perimeter [m], back to the first point. */
  readonly perimeter: number;
  /** x and y of the centre of the area [m]. */
  readonly centroid: readonly [x: number, y: number];
  /** Direction of the points around the ring, seen from above. */
  readonly orientation: 'counter-clockwise' | 'clockwise';
}

/**
 * Area, perimeter and centroid of a ring of many points, in floats and in one pass: the sum of
 * {@link ringArea}, `P = sum of edge lengths` and `C = sum((p(i) + p(i+1)) cross(i)) / (6 A)`, all
 * with the origin at the first point. The relative error of area and perimeter is below `n 1e-16` for
 * a ring that fills its square; that of the centroid is as small a share of its extent.
 *
 * The last point joins the first. The ring may run either way round, and it is not checked for
 * crossing edges.
 *
 * @param xy - interleaved `x0, y0, x1, y1 ...` [metres], three points or more; not changed
 * @returns area [m2], perimeter [m], centroid [m, m], orientation
 * @throws `WRONG_TYPE`, `TOO_FEW`, `NOT_FINITE`, `OUT_OF_RANGE`, `ZERO_AREA` (no centroid then)
 * @source derived
 * @example
 * const { area, perimeter, centroid } = ringMeasures(Float64Array.of(0, 0, 3, 0, 3, 4, 0, 4));
 * [area, perimeter, ...centroid] //=> [12, 14, 1.5, 2]
 */
export function ringMeasures(xy: Float64Array): RingMeasures {
  requireRing(xy);
  const count = xy.length;
  const x0 = xy[0] ?? 0;
  const y0 = xy[1] ?? 0;
  let twice = 0;
  let momentX = 0;
  let momentY = 0;
  let perimeter = 0;
  let x = 0;
  let y = 0;
  for (let k = 2; k < count; k += 2) {
    const nextX = (xy[k] ?? 0) - x0;
    const nextY = (xy[k + 1] ?? 0) - y0;
    const dx = nextX - x;
    const dy = nextY - y;
    const cross = x * dy - dx * y;
    perimeter += Math.sqrt(dx * dx + dy * dy);
    twice += cross;
    momentX += (x + nextX) * cross;
    momentY += (y + nextY) * cross;
    x = nextX;
    y = nextY;
  }
  perimeter += Math.sqrt(x * x + y * y);
  requireFinite(momentX + momentY + perimeter, xy);
  if (twice === 0) throw fault('ZERO_AREA', 'the ring has no area, so it has no centroid');
  // adding nothing turns a negative zero into zero
  const centroid = [x0 + momentX / (3 * twice) + 0, y0 + momentY / (3 * twice) + 0] as const;
  return Object.freeze({
    area: Math.abs(twice) / 2,
    perimeter,
    centroid: Object.freeze(centroid),
    orientation: twice > 0 ? 'counter-clockwise' : 'clockwise',
  });
}
