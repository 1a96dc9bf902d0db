import { entry } from '../invariant.js';
import type { Length } from '../units/quantity.js';

/** The last part of a line that starts at or before a station, else the first. Internal. */
export function partAt<T>(
  /** At least one, in order of their starts. */
  parts: readonly T[],
  station: Length,
  startOf: (part: T) => Length,
): T {
  let found = 0;
  let beyond = parts.length;
  while (beyond - found > 1) {
    const middle = (found + beyond) >> 1;
    if (startOf(entry(parts, middle)).compare(station) <= 0) found = middle;
    else beyond = middle;
  }
  return entry(parts, found);
}
