import { height, station, type Deepest } from './flat-profile.js';

/**
 * The deepest reading below any position of an edge that is set down on each reading and reaches to
 * `reach[i]`, by looking at each: n m steps, the fastest for a few hundred readings. Internal.
 */
export function scanDirectly(flat: Float64Array, reach: Int32Array): Deepest {
  let found: Deepest | undefined;
  for (let from = 0; from < reach.length; from += 1) {
    const to = steepestFrom(flat, from, reach[from] ?? from);
    if (to > from) found ??= { index: from, from, to, gap: 0 };
    if (found !== undefined && to > from + 1) found = deepestIn(flat, { from, to, found });
  }
  return found ?? { index: 0, from: 0, to: 0, gap: 0 };
}

/** The reading that is steepest seen from one, the farthest of equals. */
function steepestFrom(flat: Float64Array, from: number, last: number): number {
  const [s, z] = [station(flat, from), height(flat, from)];
  let [best, steepest] = [from, -Infinity];
  for (let k = from + 1; k <= last; k += 1) {
    const slope = (height(flat, k) - z) / (station(flat, k) - s);
    if (slope >= steepest) {
      best = k;
      steepest = slope;
    }
  }
  return best;
}

interface Chord {
  readonly from: number;
  readonly to: number;
  /** What was found below other chords. */
  readonly found: Deepest;
}

/** The deepest below a chord, if it is deeper than what was found; of equals, the one to the left. */
function deepestIn(flat: Float64Array, { from, to, found }: Chord): Deepest {
  const [s, z] = [station(flat, from), height(flat, from)];
  const [run, rise] = [station(flat, to) - s, height(flat, to) - z];
  let [index, gap] = [found.index, found.gap];
  for (let k = from + 1; k < to; k += 1) {
    const below = (rise * (station(flat, k) - s)) / run - (height(flat, k) - z);
    if (below > gap || (below === gap && gap > 0 && k < index)) {
      index = k;
      gap = below;
    }
  }
  return gap > found.gap || index < found.index ? { index, from, to, gap } : found;
}
