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
 * Finds two edges of a ring that cross or touch, other than neighbours at their common point: a line
 * sweeps over the points, and only edges that come to lie side by side are compared, with exact
 * predicates. Time n log n whatever the figure. A point that repeats the one before is passed over.
 *
 * @param xy - x and y of each point in turn [metres], three points or more; not changed
 * @returns the two edges, of several such pairs any one; undefined for a sound ring
 * @throws `WRONG_TYPE`, `TOO_FEW`, `NOT_FINITE`, `OUT_OF_RANGE`
 * @source derived
 * @example
 * ringCrossing(Float64Array.of(0, 0, 2, 2, 2, 0, 0, 2)) //=> { first: 0, second: 2 }
 * ringCrossing(Float64Array.of(0, 0, 2, 0, 2, 2, 0, 2)) //=> undefined
 */
export function ringCrossing(xy: Float64Array): RingCrossing | undefined {
  requireRing(xy);
  requireInRange(xy);
  const found = sweepForCrossing(floatSites([xy]));
  return found && Object.freeze({ first: found.first, second: found.second });
}
