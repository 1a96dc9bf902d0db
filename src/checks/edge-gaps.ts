import { entry, lastOf } from '../invariant.js';
import {
  compareRatios,
  signOfRatio,
  subtractRatios,
  ZERO_RATIO,
  type Ratio,
} from '../units/ratio.js';
import { cross, minus, type Vector } from '../units/vector.js';
import { belowChord } from './chord.js';

/** A reading under an edge, and the two readings that the edge rests on above it. Internal. */
export interface EdgeGap {
  readonly index: number;
  readonly gap: Ratio;
  readonly contacts: readonly [number, number];
}

/**
 * For each reading, the other contact of an edge set down with its left end there and tipped until
 * it touches: among the readings within reach the one at the steepest slope, the farthest of
 * equals; null if none is within reach. Exact. Internal.
 */
export function edgeRests(profile: readonly Vector[], length: Ratio): readonly (number | null)[] {
  return profile.map((from, i) => {
    let best: { readonly index: number; readonly to: Vector } | null = null;
    for (let k = i + 1; k < profile.length; k += 1) {
      const to = minus(entry(profile, k), from);
      if (compareRatios(to.x, length) > 0) break;
      if (best === null || signOfRatio(cross(best.to, to)) >= 0) best = { index: k, to };
    }
    return best?.index ?? null;
  });
}

/**
 *
 * The largest gap over each reading, over all positions of an edge along a profile; null for a
 * reading that the edge never bridges. `rests` are the contacts that {@link edgeRests} finds.
 *
 * No other position leaves a larger gap. Any position can be moved until its left end is its left
 * contact; that can only bring more readings under the edge, and so only lift it. Exact. Internal.
 */
export function edgeGaps(
  profile: readonly Vector[],
  rests: readonly (number | null)[],
): readonly (EdgeGap | null)[] {
  const greatest: (EdgeGap | null)[] = profile.map(() => null);
  profile.forEach((from, i) => {
    const j = rests[i] ?? i;
    const chord = minus(entry(profile, j), from);
    for (let k = i + 1; k < j; k += 1) {
      const gap = belowChord(chord, minus(entry(profile, k), from));
      const known = greatest[k] ?? null;
      if (known === null || compareRatios(gap, known.gap) > 0) {
        greatest[k] = { index: k, gap, contacts: [i, j] };
      }
    }
  });
  return greatest;
}

/** The largest gap above 0, the first of equals. Internal. */
export function greatestGap(gaps: readonly (EdgeGap | null)[]): EdgeGap | null {
  return gaps.reduce<EdgeGap | null>(
    (most, one) =>
      one !== null && compareRatios(one.gap, most?.gap ?? ZERO_RATIO) > 0 ? one : most,
    null,
  );
}

/** How well readings show the surface under an edge. Internal. */
export interface EdgeReach {
  /**
   * The shortest length that the readings under the edge span, over positions of the whole edge on
   * the profile; the whole profile if it is shorter than the edge.
   */
  readonly reach: Ratio;
  /** The fewest readings under the edge at these positions. */
  readonly fewest: number;
  /** The most readings under it anywhere. */
  readonly most: number;
}

/**
 * How well readings show the surface under an edge, set down with its left end at each. Internal.
 */
export function edgeReach(profile: readonly Vector[], length: Ratio): EdgeReach {
  const stations = profile.map(({ x }) => x);
  const [first, last] = [entry(stations, 0), lastOf(stations)];
  const isWithin = (from: Ratio, to: Ratio) => compareRatios(subtractRatios(to, from), length) <= 0;
  const isShort = isWithin(first, last);
  let found: EdgeReach = { reach: subtractRatios(last, first), fewest: stations.length, most: 0 };
  let end = 0;
  stations.forEach((start, i) => {
    while (end + 1 < stations.length && isWithin(start, entry(stations, end + 1))) end += 1;
    const [count, span] = [end - i + 1, subtractRatios(entry(stations, end), start)];
    found = { ...found, most: Math.max(found.most, count) };
    if (isShort || compareRatios(subtractRatios(last, start), length) < 0) return;
    const reach = compareRatios(span, found.reach) < 0 ? span : found.reach;
    found = { ...found, reach, fewest: Math.min(found.fewest, count) };
  });
  return found;
}
