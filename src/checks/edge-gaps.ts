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
 * The greatest gap over each reading, over all positions of an edge along a profile; none for a
 * reading that the edge never bridges.
 *
 * An edge set down with one end at reading i and tipped until it touches rests on i and on the reading
 * that is steepest seen from i, among those that it reaches. All that stands under the edge lies on or
 * below it. No other position leaves a greater gap: wherever the edge lies, its left contact i may be
 * taken as its end, which can only bring more readings under it, and so can only lift it. Exact.
 * Internal.
 */
export function edgeGaps(profile: readonly Vector[], length: Ratio): readonly (EdgeGap | null)[] {
  const greatest: (EdgeGap | null)[] = profile.map(() => null);
  profile.forEach((from, i) => {
    const j = steepestFrom(profile, i, length);
    const edge = j === undefined ? undefined : profile[j];
    if (j === undefined || edge === undefined) return;
    const chord = minus(edge, from);
    for (let k = i + 1; k < j; k += 1) {
      const gap = belowChord(chord, minus(profile[k] ?? from, from));
      const known = greatest[k];
      if (known === null || known === undefined || compareRatios(gap, known.gap) > 0) {
        greatest[k] = { index: k, gap, contacts: [i, j] };
      }
    }
  });
  return greatest;
}

/** The reading that is steepest seen from one, the farthest of equals, within the length. */
function steepestFrom(profile: readonly Vector[], i: number, length: Ratio): number | undefined {
  const from = profile[i];
  if (from === undefined) return undefined;
  let best: { readonly index: number; readonly to: Vector } | undefined;
  for (let k = i + 1; k < profile.length; k += 1) {
    const to = minus(profile[k] ?? from, from);
    if (compareRatios(to.x, length) > 0) break;
    if (best === undefined || signOfRatio(cross(best.to, to)) >= 0) best = { index: k, to };
  }
  return best?.index;
}

/** The greatest of some gaps, the first of equals. Internal. */
export function greatestGap(gaps: readonly (EdgeGap | null)[]): EdgeGap | null {
  return gaps.reduce<EdgeGap | null>((most, one) => {
    if (one === null) return most;
    return most === null || compareRatios(one.gap, most.gap) > 0 ? one : most;
  }, null);
}

/** How well readings show what lies under an edge. Internal. */
export interface EdgeReach {
  /**
   * The shortest stretch that the readings under the edge span, over the places where the profile
   * carries the whole edge; the whole profile where it is shorter than the edge.
   */
  readonly reach: Ratio;
  /** The fewest readings under the edge at these places. */
  readonly fewest: number;
  /** The most readings under it anywhere. */
  readonly most: number;
}

/** How well readings show what lies under an edge, set down with its left end at each. Internal. */
export function edgeReach(profile: readonly Vector[], length: Ratio): EdgeReach {
  const stations = profile.map(({ x }) => x);
  const [first, last] = [stations[0] ?? ZERO_RATIO, stations.at(-1) ?? ZERO_RATIO];
  const isWithin = (from: Ratio, to: Ratio) => compareRatios(subtractRatios(to, from), length) <= 0;
  const isShort = isWithin(first, last);
  let found: EdgeReach = { reach: subtractRatios(last, first), fewest: stations.length, most: 0 };
  let end = 0;
  stations.forEach((start, i) => {
    while (end + 1 < stations.length && isWithin(start, stations[end + 1] ?? last)) end += 1;
    const [count, span] = [end - i + 1, subtractRatios(stations[end] ?? last, start)];
    found = { ...found, most: Math.max(found.most, count) };
    if (isShort || compareRatios(subtractRatios(last, start), length) < 0) return;
    const reach = compareRatios(span, found.reach) < 0 ? span : found.reach;
    found = { ...found, reach, fewest: Math.min(found.fewest, count) };
  });
  return found;
}
