import { fault, type SettlineError } from '../errors.js';
import { flatPairs } from './flat-pairs.js';

/** What bulk fits take: `[x, y]` pairs, or a flat `Float64Array` of `x0, y0, x1, y1 ...`, in metres. */
export type BulkPoints = readonly (readonly [number, number])[] | Float64Array;

/** What a fit needs, in words, and how many points at least. Internal. */
export interface PointNeed {
  readonly least: number;
  readonly words: string;
}

/** Brings points into one flat array, a copy only where they are pairs. Internal. */
export function flatPoints(points: unknown, need: PointNeed): Float64Array {
  const xy = flatPairs(points, { pair: 'a point [x, y]', flat: 'x0, y0, x1, y1 ...' });
  if (xy.length >= 2 * need.least) return xy;
  throw fault('TOO_FEW', `${need.words}, got ${xy.length / 2}`, { got: xy.length / 2 });
}

/**
 * Sums of squares [m2] beyond this would leave the range of floats once multiplied: points further
 * apart are refused. Internal.
 */
export const MOST_SPREAD = 1e150;

/**
 * The fault of coordinates whose sums cannot be used: one is not finite, or they are too far apart.
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
