import { makeSweepStatus } from './sweep-status.js';

/** Two edges that cross or touch, and the rings they belong to. Internal. */
export interface Crossing {
  readonly first: number;
  readonly second: number;
  readonly ring: number;
  readonly otherRing: number;
}

/** Points of closed rings, one ring after the other, and what is exactly known of them. Internal. */
export interface Sites {
  /** Where each ring starts, and the number of points at the end. */
  readonly starts: readonly number[];
  /** Orders points by x, then by y: less than, equal to or more than 0, exactly. */
  compare(a: number, b: number): number;
  /** 1 where r lies left of the line from p to q, -1 right, 0 on it, exactly. */
  sideOf(p: number, q: number, r: number): -1 | 0 | 1;
}

/**
 * Finds two edges of closed rings that cross or touch, other than neighbours at their common point:
 * a line sweeps over the points from left to right, and only edges that become neighbours along it
 * are compared, with exact predicates (after Shamos and Hoey). Time n log n whatever the figure.
 * Points that repeat the one before are passed over. Internal.
 */
export function sweepForCrossing(sites: Sites): Crossing | undefined {
  const found = sweep(sites, gather(sites));
  return found === undefined ? undefined : crossingOf(sites, found);
}

/** Names the rings of two edges that are counted through. Internal. */
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
 * Edge k runs from point k to the next; its left end is the one that the sweep meets first. Of points
 * that repeat each other only the last one counts, since its edge goes on.
 */
interface Edges {
  /** The points that count, from left to right. */
  readonly order: Uint32Array;
  readonly previous: Int32Array;
  readonly left: Int32Array;
  readonly right: Int32Array;
}

function gather(sites: Sites): Edges {
  const count = sites.starts.at(-1) ?? 0;
  const next = new Int32Array(count).fill(-1);
  const previous = new Int32Array(count);
  const kept = new Uint32Array(count);
  let room = 0;
  for (let ring = 0; ring + 1 < sites.starts.length; ring += 1) {
    const [start, end] = [sites.starts[ring] ?? 0, sites.starts[ring + 1] ?? 0];
    const first = room;
    for (let k = start; k < end; k += 1) {
      if (sites.compare(k, k + 1 < end ? k + 1 : start) !== 0) kept[room++] = k;
    }
    for (let k = first; k < room; k += 1) {
      const [from, to] = [kept[k] ?? 0, kept[k + 1 < room ? k + 1 : first] ?? 0];
      next[from] = to;
      previous[to] = from;
    }
  }
  const order = kept.subarray(0, room).sort((a, b) => sites.compare(a, b));
  const rank = new Int32Array(count);
  for (let k = 0; k < room; k += 1) rank[order[k] ?? 0] = k;
  const [left, right] = [new Int32Array(count), new Int32Array(count)];
  for (const k of order) {
    const to = next[k] ?? 0;
    const runsRight = (rank[k] ?? 0) < (rank[to] ?? 0);
    left[k] = runsRight ? k : to;
    right[k] = runsRight ? to : k;
  }
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

/** What happens at one point: edges that end there leave the status, edges that start there enter. */
function makePass(sites: Sites, edges: Edges): (point: number, edgeBefore: number) => Found {
  const { left, right, previous } = edges;
  const status = makeSweepStatus(edges.order.length);
  const slotOf = new Int32Array(left.length);
  const areNeighbours = (a: number, b: number) => previous[a] === b || previous[b] === a;
  const meet = (low: number, high: number): Found => {
    if (low < 0 || high < 0) return undefined;
    const [a, b] = [status.edgeAt(low), status.edgeAt(high)];
    if (areNeighbours(a, b)) return undefined;
    const [a1, a2, b1, b2] = [left[a] ?? 0, right[a] ?? 0, left[b] ?? 0, right[b] ?? 0];
    return segmentsMeet(sites, a1, a2, b1, b2) ? [a, b] : undefined;
  };
  const check = (slot: number): Found =>
    meet(status.below(slot), slot) ?? meet(slot, status.above(slot));

  function leave(edge: number): Found {
    const slot = slotOf[edge] ?? 0;
    const [low, high] = [status.below(slot), status.above(slot)];
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
    const [ending, starting] = startsHere ? [edgeBefore, point] : [point, edgeBefore];
    const slot = slotOf[ending] ?? 0;
    status.replace(slot, starting);
    slotOf[starting] = slot;
    return check(slot);
  };
}

/** True where two edges have a point in common; each is given from left to right. Internal. */
export function segmentsMeet(
  sites: Sites,
  ...[a1, a2, b1, b2]: readonly [number, number, number, number]
): boolean {
  const [o1, o2] = [sites.sideOf(a1, a2, b1), sites.sideOf(a1, a2, b2)];
  if (o1 * o2 > 0) return false;
  const [o3, o4] = [sites.sideOf(b1, b2, a1), sites.sideOf(b1, b2, a2)];
  if (o3 * o4 > 0) return false;
  // all on one line: they meet where their spans do
  return !(o1 === 0 && o2 === 0) || (sites.compare(a1, b2) <= 0 && sites.compare(b1, a2) <= 0);
}
