import { height, station, type Deepest } from './flat-profile.js';

/**
 * The deepest reading below a straightedge that is set down on each reading i and reaches to
 * `reach[i]`, found by checking every reading: n m steps, the fastest for a few hundred readings.
 * Internal.
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
  const s = station(flat, from);
  const z = height(flat, from);
  let best = from;
  let steepest = -Infinity;
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
  /** The deepest reading below the chords before. */
  readonly found: Deepest;
}

/** The deepest reading below a chord, or the one found before if that is as deep or deeper. */
function deepestIn(flat: Float64Array, { from, to, found }: Chord): Deepest {
  const s = station(flat, from);
  const z = height(flat, from);
  const run = station(flat, to) - s;
  const rise = height(flat, to) - z;
  let index = found.index;
  let gap = found.gap;
  for (let k = from + 1; k < to; k += 1) {
    const below = (rise * (station(flat, k) - s)) / run - (height(flat, k) - z);
    if (below > gap || (below === gap && gap > 0 && k < index)) {
      index = k;
      gap = below;
    }
  }
  return gap > found.gap || index < found.index ? { index, from, to, gap } : found;
}
