import { boundsOf } from '../bounds.js';
import { at } from '../floats.js';

/** Cells along each side of the grid that points are sorted by: a power of two. */
const SIDE = 256;

/** Below this number of points sorting costs more than it saves. */
const WORTHWHILE = 100_000;

/**
 * The order of points along a curve that fills the plane (after Hilbert), so that neighbours on the
 * site are neighbours in memory: a million points are then triangulated in less time. One pass over
 * a grid; undefined for few points. Internal.
 *
 * @param points - `stride` floats a point, x and y first
 */
export function spreadOrder(points: Float64Array, stride: number): Uint32Array | undefined {
  const count = points.length / stride;
  if (count < WORTHWHILE) return undefined;
  const { west, south, east, north } = boundsOf([points], stride);
  const perX = SIDE / (east - west);
  const perY = SIDE / (north - south);
  const curve = placesAlongCurve();
  const keys = new Uint16Array(count);
  const starts = new Uint32Array(SIDE * SIDE + 1);
  for (let k = 0; k < count; k += 1) {
    const column = cellOf((at(points, stride * k) - west) * perX);
    const row = cellOf((at(points, stride * k + 1) - south) * perY);
    const key = curve[SIDE * row + column] ?? 0;
    keys[k] = key;
    starts[key + 1] = (starts[key + 1] ?? 0) + 1;
  }
  for (let key = 0; key < SIDE * SIDE; key += 1) {
    starts[key + 1] = (starts[key + 1] ?? 0) + (starts[key] ?? 0);
  }
  const order = new Uint32Array(count);
  for (let k = 0; k < count; k += 1) {
    const key = keys[k] ?? 0;
    const place = starts[key] ?? 0;
    order[place] = k;
    starts[key] = place + 1;
  }
  return order;
}

/** NaN, where all points have one x or y, counts as 0. */
const cellOf = (value: number): number => (value >= SIDE ? SIDE - 1 : value > 0 ? value | 0 : 0);

/** How far along the curve each cell lies. */
function placesAlongCurve(): Uint16Array {
  const places = new Uint16Array(SIDE * SIDE);
  for (let cell = 0; cell < places.length; cell += 1) {
    let x = cell % SIDE;
    let y = (cell / SIDE) | 0;
    let place = 0;
    for (let size = SIDE >> 1; size > 0; size >>= 1) {
      const right = (x & size) > 0 ? 1 : 0;
      const upper = (y & size) > 0 ? 1 : 0;
      place += size * size * ((3 * right) ^ upper);
      if (upper === 1) continue;
      // the quarter is seen turned
      const turned = right === 1 ? SIDE - 1 - y : y;
      y = right === 1 ? SIDE - 1 - x : x;
      x = turned;
    }
    places[cell] = place;
  }
  return places;
}
