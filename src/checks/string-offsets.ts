import { entry } from '../invariant.js';
import {
  absoluteRatio,
  compareRatios,
  negateRatio,
  subtractRatios,
  type Ratio,
} from '../units/ratio.js';
import { minus, type Vector } from '../units/vector.js';
import { belowChord } from './chord.js';

/** A reading beside a string, and the two readings that the string is held on. Internal. */
export interface StringOffset {
  readonly offset: Ratio;
  readonly ends: readonly [number, number];
}

/**
 * The largest distance of each reading from a string, + left of travel, over all positions of the
 * string; none for a reading that is always an end. The string is held on two readings as far apart
 * as its length allows, and moved from reading to reading. Exact. Internal.
 */
export function stringOffsets(
  line: readonly Vector[],
  length: Ratio,
): readonly (StringOffset | null)[] {
  const largest: (StringOffset | null)[] = line.map(() => null);
  let end = 0;
  line.forEach((from, i) => {
    const known = end;
    while (end + 1 < line.length && isWithin(from, entry(line, end + 1), length)) end += 1;
    // a string with the same end as the last one is only shorter
    if (end === known && i > 0) return;
    const chord = minus(entry(line, end), from);
    for (let k = i + 1; k < end; k += 1) {
      const offset = negateRatio(belowChord(chord, minus(entry(line, k), from)));
      const most = largest[k];
      if (most === null || most === undefined || isFarther(offset, most.offset)) {
        largest[k] = { offset, ends: [i, end] };
      }
    }
  });
  return largest;
}

const isWithin = (from: Vector, to: Vector, length: Ratio): boolean =>
  compareRatios(subtractRatios(to.x, from.x), length) <= 0;

const isFarther = (a: Ratio, b: Ratio): boolean =>
  compareRatios(absoluteRatio(a), absoluteRatio(b)) > 0;
