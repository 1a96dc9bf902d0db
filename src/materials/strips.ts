import { exactOf, type Length } from '../units/quantity.js';
import { countOf, wholeUp } from './whole-number.js';

/**
 * Number of strips or pieces of one size that cover a distance, each overlapping the one before: 1
 * if one is enough, else `1 + ceil((B - w) / (w - o))`, on exact values. The overlap is less than
 * the size. Internal.
 */
export function stripsAcross(distance: Length, size: Length, overlap: Length): number {
  if (distance.compare(size) <= 0) return 1;
  return countOf(1 + wholeUp(exactOf(distance.minus(size)), exactOf(size.minus(overlap))));
}
