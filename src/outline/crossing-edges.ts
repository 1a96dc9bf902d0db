import { entry, lastOf } from '../invariant.js';
import type { Vector } from '../units/vector.js';
import { exactSites } from './exact-sites.js';
import {
  crossingOf,
  segmentsMeet,
  sweepForCrossing,
  type Crossing,
  type Sites,
} from '../geometry/ring/sweep-for-crossing.js';

/** Up to this many points, comparing all pairs of edges costs less than a sweep. */
const FEW = 24;

/**
 * Finds two edges of closed rings that cross or touch, except neighbours at their common point.
 * Exact. Internal.
 *
 * @returns the two edges, or undefined if every ring is simple and apart from the others
 */
export function crossingEdges(rings: readonly (readonly Vector[])[]): Crossing | undefined {
  const sites = exactSites(rings);
  return lastOf(sites.starts) > FEW ? sweepForCrossing(sites) : comparePairs(sites);
}

/** Finds the first pair of edges that cross or touch. Internal. */
export function comparePairs(sites: Sites): Crossing | undefined {
  const next = sites.starts.slice(0, -1).flatMap((start, ring) => {
    const end = entry(sites.starts, ring + 1);
    return Array.from({ length: end - start }, (_, k) =>
      start + k + 1 < end ? start + k + 1 : start,
    );
  });
  const edges = next.map((to, from): Edge => {
    const runsRight = sites.compare(from, to) <= 0;
    return { from, to, left: runsRight ? from : to, right: runsRight ? to : from };
  });
  for (let i = 0; i < edges.length; i += 1) {
    const one = edges[i];
    for (let j = i + 1; j < edges.length; j += 1) {
      const other = edges[j];
      if (one && other && edgesMeet(sites, one, other)) return crossingOf(sites, [i, j]);
    }
  }
  return undefined;
}

interface Edge {
  readonly from: number;
  readonly to: number;
  /** The end that lies further to the left, or below. */
  readonly left: number;
  readonly right: number;
}

/** Neighbours share a point; they only clash if one runs back over the other. */
function edgesMeet(sites: Sites, a: Edge, b: Edge): boolean {
  if (a.to === b.from) return foldsBack(sites, a.from, a.to, b.to);
  if (b.to === a.from) return foldsBack(sites, b.from, b.to, a.to);
  // far apart, or one ends before the other starts
  if (sites.areApart(a.left, a.right, b.left, b.right)) return false;
  if (sites.compare(a.right, b.left) < 0 || sites.compare(b.right, a.left) < 0) return false;
  return segmentsMeet(sites, a.left, a.right, b.left, b.right);
}

const foldsBack = (sites: Sites, from: number, by: number, to: number): boolean =>
  sites.sideOf(from, by, to) === 0 && sites.compare(from, by) * sites.compare(by, to) < 0;
