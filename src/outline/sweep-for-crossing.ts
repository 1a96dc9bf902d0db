import { orient2d } from 'robust-predicates';
import { makeSweepStatus } from './sweep-status.js';

/** Two edges that cross or touch, and the rings they belong to. Internal. */
export interface Crossing {
  readonly first: number;
  readonly second: number;
  readonly ring: number;
  readonly otherRing: number;
}

/**
 * Finds two edges of closed rings that cross or touch, other than neighbours at their common point:
 * a line sweeps over the points from left to right, and only edges that become neighbours along it
 * are compared, with exact predicates (after Shamos and Hoey). Time n log n whatever the figure.
 * Points that repeat the one before are passed over. Coordinates must be finite. Internal.
 */
export function sweepForCrossing(rings: readonly Float64Array[]): Crossing | undefined {
  const points = gather(rings);
  const found = sweep(points);
  if (found === undefined) return undefined;
  const [a, b] = found[0] < found[1] ? found : [found[1], found[0]];
  const [one, other] = [points.origin(a), points.origin(b)];
  return { first: one.index, second: other.index, ring: one.ring, otherRing: other.ring };
}

interface Points {
  readonly count: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly next: Int32Array;
  readonly previous: Int32Array;
  /** Where a point stood before repeated ones were left out. */
  origin(point: number): { readonly ring: number; readonly index: number };
}

function gather(rings: readonly Float64Array[]): Points {
  const room = rings.reduce((sum, ring) => sum + (ring.length >> 1), 0);
  const [x, y] = [new Float64Array(room), new Float64Array(room)];
  const [next, previous] = [new Int32Array(room), new Int32Array(room)];
  const index = new Int32Array(room);
  const ends: number[] = [];
  let count = 0;
  for (const ring of rings) {
    const first = count;
    for (let k = 0; k < ring.length - 1; k += 2) {
      const [px, py] = [ring[k] ?? 0, ring[k + 1] ?? 0];
      if (count > first && px === x[count - 1] && py === y[count - 1]) {
        // the edge in between has no length: the next one starts here
        index[count - 1] = k >> 1;
        continue;
      }
      [x[count], y[count], index[count]] = [px, py, k >> 1];
      count += 1;
    }
    while (count > first + 1 && x[count - 1] === x[first] && y[count - 1] === y[first]) count -= 1;
    for (let k = first; k < count; k += 1) {
      next[k] = k + 1 < count ? k + 1 : first;
      previous[k] = k > first ? k - 1 : count - 1;
    }
    ends.push(count);
  }
  const origin = (point: number) => ({
    ring: ends.findIndex((end) => point < end),
    index: index[point] ?? 0,
  });
  return { count, x, y, next, previous, origin };
}

/** Edge k runs from point k to the next; its left end is the one that the sweep meets first. */
interface Edges {
  readonly left: Int32Array;
  readonly right: Int32Array;
}

function sweep(points: Points): readonly [number, number] | undefined {
  const { count, next, previous } = points;
  const order = inOrder(points);
  const rank = new Int32Array(count);
  for (let k = 0; k < count; k += 1) rank[order[k] ?? 0] = k;
  const edges = { left: new Int32Array(count), right: new Int32Array(count) };
  for (let k = 0; k < count; k += 1) {
    const to = next[k] ?? 0;
    const runsRight = (rank[k] ?? 0) < (rank[to] ?? 0);
    edges.left[k] = runsRight ? k : to;
    edges.right[k] = runsRight ? to : k;
  }
  const pass = makePass(points, edges);
  for (let k = 0; k < count; k += 1) {
    const point = order[k] ?? 0;
    const before = order[k - 1];
    if (
      before !== undefined &&
      points.x[before] === points.x[point] &&
      points.y[before] === points.y[point]
    ) {
      return [before, point];
    }
    const found = pass(point, previous[point] ?? 0);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** Points by x, then by y. */
function inOrder({ count, x, y }: Points): Uint32Array {
  const order = new Uint32Array(count);
  for (let k = 0; k < count; k += 1) order[k] = k;
  return order.sort((a, b) => (x[a] ?? 0) - (x[b] ?? 0) || (y[a] ?? 0) - (y[b] ?? 0));
}

type Found = readonly [number, number] | undefined;

/** What happens at one point: edges that end there leave the status, edges that start there enter. */
function makePass(points: Points, edges: Edges): (point: number, edgeBefore: number) => Found {
  const status = makeSweepStatus(points.count);
  const slotOf = new Int32Array(points.count);
  const side = (from: number, to: number, p: number) => sideOf(points, from, to, p);
  const meet = (low: number, high: number): Found => {
    if (low < 0 || high < 0) return undefined;
    const [a, b] = [status.edgeAt(low), status.edgeAt(high)];
    return areNeighbours(points, a, b) || !segmentsMeet(points, edges, a, b) ? undefined : [a, b];
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
    const [a, b] = [edges.right[one] ?? 0, edges.right[other] ?? 0];
    const turn = side(point, a, b);
    if (turn === 0) return [one, other];
    const [low, high] = turn > 0 ? [one, other] : [other, one];
    const slot = status.insert(low, (edge) =>
      side(edges.left[edge] ?? 0, edges.right[edge] ?? 0, point),
    );
    if (slot < 0) return [low, -1 - slot];
    slotOf[low] = slot;
    slotOf[high] = status.insertAbove(high, slot);
    return (
      meet(status.below(slot), slot) ?? meet(slotOf[high] ?? 0, status.above(slotOf[high] ?? 0))
    );
  }

  return (point, edgeBefore) => {
    const starts = [edgeBefore, point].filter((edge) => edges.left[edge] === point);
    const [one, other] = starts;
    if (one === undefined) return leave(edgeBefore) ?? leave(point);
    if (other !== undefined) return start(point, one, other);
    const ending = one === point ? edgeBefore : point;
    const slot = slotOf[ending] ?? 0;
    status.replace(slot, one);
    slotOf[one] = slot;
    return check(slot);
  };
}

const areNeighbours = ({ next }: Points, a: number, b: number): boolean =>
  next[a] === b || next[b] === a;

/** 1 where r lies left of the line from p to q, -1 right, 0 on it, exactly. */
function sideOf({ x, y }: Points, p: number, q: number, r: number): -1 | 0 | 1 {
  const turn = orient2d(x[p] ?? 0, y[p] ?? 0, x[q] ?? 0, y[q] ?? 0, x[r] ?? 0, y[r] ?? 0);
  return turn < 0 ? 1 : turn > 0 ? -1 : 0;
}

function segmentsMeet(points: Points, { left, right }: Edges, a: number, b: number): boolean {
  const [a1, a2, b1, b2] = [left[a] ?? 0, right[a] ?? 0, left[b] ?? 0, right[b] ?? 0];
  const [o1, o2] = [sideOf(points, a1, a2, b1), sideOf(points, a1, a2, b2)];
  if (o1 * o2 > 0) return false;
  const [o3, o4] = [sideOf(points, b1, b2, a1), sideOf(points, b1, b2, a2)];
  if (o3 * o4 > 0) return false;
  // all on one line: they meet where their spans do
  return !(o1 === 0 && o2 === 0) || overlap(points, a1, a2, b1, b2);
}

function overlap({ x, y }: Points, a1: number, a2: number, b1: number, b2: number): boolean {
  const isAlong = (list: Float64Array) =>
    Math.max(list[a1] ?? 0, list[b1] ?? 0) <= Math.min(list[a2] ?? 0, list[b2] ?? 0) ||
    Math.max(list[a2] ?? 0, list[b2] ?? 0) <= Math.min(list[a1] ?? 0, list[b1] ?? 0);
  return isAlong(x) && isAlong(y);
}
