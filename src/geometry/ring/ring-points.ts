import { fault, type SettlineError } from '../../errors.js';
import { isFloats, isInRange } from '../floats.js';

/** Refuses anything but a flat list of three or more whole points. Internal. */
export function requireRing(xy: unknown): asserts xy is Float64Array {
  if (!isFloats(xy) || xy.length % 2 !== 0) {
    throw fault('WRONG_TYPE', 'expected a Float64Array x0, y0, x1, y1 ... in metres');
  }
  if (xy.length < 6) {
    const got = xy.length / 2;
    throw fault('TOO_FEW', `an outline needs three points or more, got ${got}`, { got });
  }
}

/** Refuses a sum that is NaN or infinite, and names the first such coordinate. Internal. */
export function requireFinite(sum: number, xy: Float64Array): void {
  if (!Number.isFinite(sum)) throw unusable(xy);
}

/** Refuses coordinates that are not finite, or too large or too small to multiply. Internal. */
export function requireInRange(xy: Float64Array): void {
  for (const value of xy) {
    if (!isInRange(value)) throw unusable(xy);
  }
}

function unusable(xy: Float64Array): SettlineError {
  const index = xy.findIndex((value) => !Number.isFinite(value));
  if (index < 0)
    return fault('OUT_OF_RANGE', 'a coordinate is too large or too small for a site. Write metres');
  const axis = index % 2 === 0 ? 'x' : 'y';
  const point = Math.floor(index / 2);
  return fault(
    'NOT_FINITE',
    `${axis} of point ${point} is ${xy[index] ?? NaN} (the first point is point 0)`,
    { point, axis },
  );
}
