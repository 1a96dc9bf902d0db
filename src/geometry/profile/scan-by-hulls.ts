import { height, station, type Deepest } from './flat-profile.js';
import { forEachRange, type RangeHull } from './range-hulls.js';

/**
 * The deepest reading below a straightedge that is set down on each reading i and reaches to
 * `reach[i]`, found on the hulls of ranges in n log m steps. Internal.
 */
export function scanByHulls(flat: Float64Array, reach: Int32Array): Deepest {
  return deepestBelow(flat, steepestWithin(flat, reach));
}

/** For each reading, the one within reach that is steepest seen from it; the farthest of equals. */
function steepestWithin(flat: Float64Array, reach: Int32Array): Int32Array {
  const steepest = reach.map((_, i) => i);
  const slopes = new Float64Array(reach.length).fill(-Infinity);
  forEachRange({ profile: flat, ends: reach, side: 1 }, (i, hull) => {
    const corner = steepestCorner(flat, i, hull);
    const slope = slopeTo(flat, i, corner);
    const known = slopes[i] ?? slope;
    if (slope < known || (slope === known && corner < (steepest[i] ?? corner))) return;
    slopes[i] = slope;
    steepest[i] = corner;
  });
  return steepest;
}

/** The deepest reading below the chords from each reading to its contact, the first of equals. */
function deepestBelow(flat: Float64Array, contacts: Int32Array): Deepest {
  const lies = contacts.findIndex((to, i) => to > i);
  let found: Deepest = { index: lies, from: lies, to: contacts[lies] ?? lies, gap: 0 };
  // of the readings up to the contact, the contact itself is left out
  const ends = contacts.map((to, i) => Math.max(i, to - 1));
  forEachRange({ profile: flat, ends, side: -1 }, (i, hull) => {
    const to = contacts[i] ?? i;
    const index = deepestCorner(flat, [i, to], hull);
    const gap = gapBelow(flat, [i, to], index);
    if (isDeeper({ index, from: i, to, gap }, found)) found = { index, from: i, to, gap };
  });
  return found;
}

/** True if a gap is larger, or the same and farther to the left. */
function isDeeper(one: Deepest, other: Deepest): boolean {
  if (one.gap !== other.gap || one.gap === 0) return one.gap > other.gap;
  return one.index < other.index || (one.index === other.index && one.from < other.from);
}

/** The corner of an upper hull that is steepest seen from a reading left of it, the last of equals. */
function steepestCorner(flat: Float64Array, from: number, hull: RangeHull): number {
  let low = 0;
  let high = hull.count() - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    const ahead = slopeTo(flat, from, hull.at(middle + 1));
    if (ahead >= slopeTo(flat, from, hull.at(middle))) low = middle + 1;
    else high = middle;
  }
  return hull.at(low);
}

/** The corner of a lower hull that is deepest below a chord, the first of equals. */
function deepestCorner(
  flat: Float64Array,
  chord: readonly [number, number],
  hull: RangeHull,
): number {
  let low = 0;
  let high = hull.count() - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    const ahead = gapBelow(flat, chord, hull.at(middle + 1));
    if (ahead > gapBelow(flat, chord, hull.at(middle))) low = middle + 1;
    else high = middle;
  }
  return hull.at(low);
}

const slopeTo = (flat: Float64Array, from: number, to: number): number =>
  (height(flat, to) - height(flat, from)) / (station(flat, to) - station(flat, from));

function gapBelow(flat: Float64Array, [from, to]: readonly [number, number], at: number): number {
  const rise = height(flat, to) - height(flat, from);
  const run = station(flat, to) - station(flat, from);
  const along = station(flat, at) - station(flat, from);
  return (rise * along) / run - (height(flat, at) - height(flat, from));
}
