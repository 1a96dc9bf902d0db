import { fault, type SettlineError } from '../errors.js';
import { flatPairs } from './flat-pairs.js';

/** Points for a bulk fit, in metres: `[x, y]` pairs, or a flat `Float64Array` of `x0, y0, x1, y1 ...`. */
export type BulkPoints = readonly (readonly [number, number])[] | Float64Array;

/** Minimum number of points of a fit, and the words for the fault. Internal. */
export interface PointNeed {
  readonly least: number;
  readonly words: string;
}

/** Returns points as one flat array; only pairs are copied. Internal. */
export function flatPoints(points: unknown, need: PointNeed): Float64Array {
  const xy = flatPairs(points, { pair: 'a point [x, y]', flat: 'x0, y0, x1, y1 ...' });
  if (xy.length >= 2 * need.least) return xy;
  throw fault('TOO_FEW', `${need.words}, got ${xy.length / 2}`, { got: xy.length / 2 });
}

/**
 * Sums of squares [m2] beyond this overflow when they are multiplied. Points that far apart are
 * refused. Internal.
 */
export const MOST_SPREAD = 1e150;

/**
 * The fault for coordinates whose sums cannot be used: one is not finite, or they are too far apart.
 * Internal.
 */
export function unusable(list: Float64Array, stride: 2 | 3): SettlineError {
  const index = list.findIndex((value) => !Number.isFinite(value));
  return index < 0
    ? fault('OUT_OF_RANGE', 'the coordinates are too far apart to calculate with')
    : fault('NOT_FINITE', 'every coordinate must be a finite number', {}, [
        Math.floor(index / stride),
      ]);
}
