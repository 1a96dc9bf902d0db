import { floatSites } from './float-sites.js';
import { requireInRange, requireRing } from './ring-points.js';
import { sweepForCrossing } from './sweep-for-crossing.js';

/** Two edges that cross or touch: edge k runs from point k to the next. */
export interface RingCrossing {
  /** The edge with the lower number, from 0. */
  readonly first: number;
  /** The edge with the higher number. */
  readonly second: number;
}

/**
 * Finds two edges of a ring that cross or touch, other than neighbours at their common point. A line
 * sweeps over the points, and only edges that become neighbours along it are compared, with exact
 * predicates. It takes n log n time for any shape. A point that repeats the one before is skipped.
 *
 * @param xy - interleaved `x0, y0, x1, y1 ...` [metres], three points or more; not changed
 * @returns the two edges, any one pair if there are several; null if no edges cross or touch
 * @throws `WRONG_TYPE`, `TOO_FEW`, `NOT_FINITE`, `OUT_OF_RANGE`
 * @source derived
 * @example
 * ringCrossing(Float64Array.of(0, 0, 2, 2, 2, 0, 0, 2)) //=> { first: 0, second: 2 }
 * ringCrossing(Float64Array.of(0, 0, 2, 0, 2, 2, 0, 2)) //=> null
 */
export function ringCrossing(xy: Float64Array): RingCrossing | null {
  requireRing(xy);
  requireInRange(xy);
  const found = sweepForCrossing(floatSites([xy]));
  return found === undefined ? null : Object.freeze({ first: found.first, second: found.second });
}
