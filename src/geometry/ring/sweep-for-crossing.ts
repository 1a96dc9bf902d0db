import { inOrder } from './in-order.js';
import { makeSweepStatus } from './sweep-status.js';

/** Two edges that cross or touch, and the rings they belong to. Internal. */
export interface Crossing {
  readonly first: number;
  readonly second: number;
  readonly ring: number;
  readonly otherRing: number;
}

/** Points of closed rings, one ring after the other, with exact predicates. Internal. */
export interface Sites {
  /** First point of each ring, then the number of points. */
  readonly starts: readonly number[];
  /** Orders points by x, then by y: less than, equal to or more than 0, exactly. */
  compare(a: number, b: number): number;
  /** True if the boxes around two edges are surely apart; each edge is given by its ends. */
  areApart(a1: number, a2: number, b1: number, b2: number): boolean;
  /** 1 if r is left of the line from p to q, -1 if right, 0 if on it, exactly. */
  sideOf(p: number, q: number, r: number): -1 | 0 | 1;
}

/**
 * Finds two edges of closed rings that cross or touch, other than neighbours at their common point. A
 * line sweeps over the points from left to right, and only edges that become neighbours along it are
 * compared, with exact predicates. It takes n log n time for any shape. Points
 * that repeat the one before are skipped. Internal.
 */
export function sweepForCrossing(sites: Sites): Crossing | undefined {
  const found = sweep(sites, gather(sites));
  return found === undefined ? undefined : crossingOf(sites, found);
}

/** Finds the rings of two edges that are numbered through all rings. Internal. */
export function crossingOf(sites: Sites, found: readonly [number, number]): Crossing {
  const [a, b] = found[0] < found[1] ? found : [found[1], found[0]];
  const [one, other] = [placeOf(sites, a), placeOf(sites, b)];
  return { first: one.index, second: other.index, ring: one.ring, otherRing: other.ring };
}

function placeOf({ starts }: Sites, point: number) {
  const ring = starts.findIndex(
    (start, index) => start <= point && point < (starts[index + 1] ?? 0),
  );
  return { ring, index: point - (starts[ring] ?? 0) };
}

/**
 * Edge k runs from point k to the next; its left end is the one that the sweep meets first. Of
 * repeated points only the last one counts, because its edge leads on.
 */
interface Edges {
  /** The points that count, from left to right; equal points in any order. */
  readonly order: Uint32Array;
  readonly previous: Int32Array;
  readonly left: Int32Array;
  readonly right: Int32Array;
}

function gather(sites: Sites): Edges {
  const count = sites.starts.at(-1) ?? 0;
  const previous = new Int32Array(count);
  const kept = new Uint32Array(count);
  const [left, right] = [new Int32Array(count), new Int32Array(count)];
  let room = 0;
  for (let ring = 0; ring + 1 < sites.starts.length; ring += 1) {
    const start = sites.starts[ring] ?? 0;
    const end = sites.starts[ring + 1] ?? 0;
    const first = room;
    for (let k = start; k < end; k += 1) {
      const order = sites.compare(k, k + 1 < end ? k + 1 : start);
      if (order === 0) continue;
      kept[room++] = k;
      // until the next point is known, this is the direction of the edge
      left[k] = order < 0 ? 1 : 0;
    }
    for (let k = first; k < room; k += 1) {
      const from = kept[k] ?? 0;
      const to = kept[k + 1 < room ? k + 1 : first] ?? 0;
      const runsRight = left[from] === 1;
      previous[to] = from;
      left[from] = runsRight ? from : to;
      right[from] = runsRight ? to : from;
    }
  }
  const order = inOrder(kept.subarray(0, room), (a, b) => sites.compare(a, b));
  return { order, previous, left, right };
}

type Found = readonly [number, number] | undefined;

function sweep(sites: Sites, edges: Edges): Found {
  const { order, previous } = edges;
  const pass = makePass(sites, edges);
  for (let k = 0; k < order.length; k += 1) {
    const point = order[k] ?? 0;
    const before = order[k - 1];
    if (before !== undefined && sites.compare(before, point) === 0) return [before, point];
    const found = pass(point, previous[point] ?? 0);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** Makes the step at one point: edges that end there leave the status, edges that start there enter. */
function makePass(sites: Sites, edges: Edges): (point: number, edgeBefore: number) => Found {
  const { left, right, previous } = edges;
  const status = makeSweepStatus(edges.order.length);
  const slotOf = new Int32Array(left.length);
  const areNeighbours = (a: number, b: number) => previous[a] === b || previous[b] === a;
  const meet = (low: number, high: number): Found => {
    if (low < 0 || high < 0) return undefined;
    const a = status.edgeAt(low);
    const b = status.edgeAt(high);
    if (areNeighbours(a, b)) return undefined;
    const a1 = left[a] ?? 0;
    const a2 = right[a] ?? 0;
    const b1 = left[b] ?? 0;
    const b2 = right[b] ?? 0;
    if (sites.areApart(a1, a2, b1, b2)) return undefined;
    return segmentsMeet(sites, a1, a2, b1, b2) ? [a, b] : undefined;
  };
  const check = (slot: number): Found =>
    meet(status.below(slot), slot) ?? meet(slot, status.above(slot));

  function leave(edge: number): Found {
    const slot = slotOf[edge] ?? 0;
    const low = status.below(slot);
    const high = status.above(slot);
    status.remove(slot);
    return meet(low, high);
  }

  function start(point: number, one: number, other: number): Found {
    const turn = sites.sideOf(point, right[one] ?? 0, right[other] ?? 0);
    if (turn === 0) return [one, other];
    const [low, high] = turn > 0 ? [one, other] : [other, one];
    const slot = status.insert(low, (edge) =>
      sites.sideOf(left[edge] ?? 0, right[edge] ?? 0, point),
    );
    if (slot < 0) return [low, -1 - slot];
    slotOf[low] = slot;
    const upper = status.insertAbove(high, slot);
    slotOf[high] = upper;
    return meet(status.below(slot), slot) ?? meet(upper, status.above(upper));
  }

  return (point, edgeBefore) => {
    const startsBefore = left[edgeBefore] === point;
    const startsHere = left[point] === point;
    if (startsBefore && startsHere) return start(point, edgeBefore, point);
    if (!startsBefore && !startsHere) return leave(edgeBefore) ?? leave(point);
    const ending = startsHere ? edgeBefore : point;
    const starting = startsHere ? point : edgeBefore;
    const slot = slotOf[ending] ?? 0;
    status.replace(slot, starting);
    slotOf[starting] = slot;
    return check(slot);
  };
}

/** True if two edges have a point in common; each is given from left to right. Internal. */
export function segmentsMeet(
  sites: Sites,
  a1: number,
  a2: number,
  b1: number,
  b2: number,
): boolean {
  const o1 = sites.sideOf(a1, a2, b1);
  const o2 = sites.sideOf(a1, a2, b2);
  if (o1 * o2 > 0) return false;
  const o3 = sites.sideOf(b1, b2, a1);
  const o4 = sites.sideOf(b1, b2, a2);
  if (o3 * o4 > 0) return false;
  // all on one line: they meet if their spans do
  return !(o1 === 0 && o2 === 0) || (sites.compare(a1, b2) <= 0 && sites.compare(b1, a2) <= 0);
}
