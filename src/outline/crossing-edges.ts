import type { Vector } from '../units/vector.js';
import { exactSites } from './exact-sites.js';
import {
  crossingOf,
  segmentsMeet,
  sweepForCrossing,
  type Crossing,
  type Sites,
} from '../geometry/ring/sweep-for-crossing.js';

/** For so few points comparing all pairs of edges costs less than a sweep. */
const FEW = 24;

/**
 * Finds two edges of closed rings that cross or touch, other than neighbours at their common point,
 * exactly. Internal.
 *
 * @returns the two edges, or undefined where every ring is simple and apart from the others
 */
export function crossingEdges(rings: readonly (readonly Vector[])[]): Crossing | undefined {
  const sites = exactSites(rings);
  return (sites.starts.at(-1) ?? 0) > FEW ? sweepForCrossing(sites) : comparePairs(sites);
}

/** Finds the first of all pairs of edges that cross or touch. Internal. */
export function comparePairs(sites: Sites): Crossing | undefined {
  const next = sites.starts.slice(0, -1).flatMap((start, ring) => {
    const end = sites.starts[ring + 1] ?? start;
    return Array.from({ length: end - start }, (_, k) =>
      start + k + 1 < end ? start + k + 1 : start,
    );
  });
  for (let i = 0; i < next.length; i += 1) {
    for (let j = i + 1; j < next.length; j += 1) {
      if (edgesMeet(sites, [i, next[i] ?? i], [j, next[j] ?? j])) return crossingOf(sites, [i, j]);
    }
  }
  return undefined;
}

type Edge = readonly [from: number, to: number];

/** Neighbours have a point in common; they only clash where one runs back over the other. */
function edgesMeet(sites: Sites, a: Edge, b: Edge): boolean {
  if (a[1] === b[0]) return foldsBack(sites, a[0], a[1], b[1]);
  if (b[1] === a[0]) return foldsBack(sites, b[0], b[1], a[1]);
  return segmentsMeet(sites, ...fromLeft(sites, a), ...fromLeft(sites, b));
}

const foldsBack = (sites: Sites, from: number, by: number, to: number): boolean =>
  sites.sideOf(from, by, to) === 0 && sites.compare(from, by) * sites.compare(by, to) < 0;

const fromLeft = (sites: Sites, [from, to]: Edge): Edge =>
  sites.compare(from, to) <= 0 ? [from, to] : [to, from];
