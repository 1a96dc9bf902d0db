import { middleOf, offsetFrom, shareAlong, type Bound, type Spot } from './bound.js';
import { crossingsOf } from './crossings.js';

/** A point where edges meet: the start of an edge (numbered through all edges), or a crossing. Internal. */
export interface Node extends Spot {
  /** The edge that starts here, the first if there are several. */
  readonly start?: number;
  /** The two edges that cross here. */
  readonly crossing?: readonly [number, number];
}

/** A stretch of an edge between two nodes next to each other. Internal. */
export interface Piece {
  readonly bound: number;
  readonly from: number;
  readonly to: number;
  /** Share of the edge before the start and before the end of the piece, 0 to 1. */
  readonly startShare: number;
  readonly endShare: number;
  readonly middle: Spot;
}

/** Nodes closer than this share of the size of the figures [-] are one. */
const SAME = 1e-11;

/** Distance [m] within which two points of these edges count as one. */
function nearOf(bounds: readonly Bound[]): number {
  let far = 0;
  for (const { box } of bounds) {
    far = Math.max(far, Math.abs(box.west), Math.abs(box.east));
    far = Math.max(far, Math.abs(box.south), Math.abs(box.north));
  }
  return SAME * far;
}

/** Cuts all edges where they meet. `next` gives the edge that follows each edge. Internal. */
export function cutEdges(bounds: readonly Bound[], next: readonly number[]) {
  const near = nearOf(bounds);
  const places = makeNodes(near);
  const starts = bounds.map(({ from }, start) => places.put({ start, ...from }));
  const ends = bounds.map((_, index) => starts[next[index] ?? index] ?? 0);
  const cuts = bounds.map((): number[] => []);
  forEachPair(bounds, near, (i, j) => {
    const [one, other] = [bounds[i], bounds[j]];
    if (one === undefined || other === undefined) return;
    for (const node of [starts[j], ends[j]]) {
      if (node !== undefined && isOn(one, places.at(node), near)) cuts[i]?.push(node);
    }
    for (const node of [starts[i], ends[i]]) {
      if (node !== undefined && isOn(other, places.at(node), near)) cuts[j]?.push(node);
    }
    for (const spot of crossingsOf(one, other)) {
      const node = places.put({ crossing: [i, j], ...spot });
      cuts[i]?.push(node);
      cuts[j]?.push(node);
    }
  });
  const pieces = bounds.flatMap((bound, index) => {
    const [start, end] = [starts[index] ?? 0, ends[index] ?? 0];
    return piecesOf(bound, { index, start, end, cuts: cuts[index] ?? [], at: places.at });
  });
  return { pieces, nodes: places.all, near };
}

function isOn(bound: Bound, spot: Spot, near: number): boolean {
  if (Math.abs(offsetFrom(bound, spot)) > near) return false;
  const share = shareAlong(bound, spot);
  return share > 0 && share < 1;
}

interface Cuts {
  readonly index: number;
  readonly start: number;
  readonly end: number;
  readonly cuts: readonly number[];
  readonly at: (node: number) => Node;
}

function piecesOf(bound: Bound, { index, start, end, cuts, at }: Cuts): Piece[] {
  const inner = [...new Set(cuts)]
    .filter((node) => node !== start && node !== end)
    .map((node) => ({ node, share: shareAlong(bound, at(node)) }))
    .sort((a, b) => a.share - b.share);
  const stops = [{ node: start, share: 0 }, ...inner, { node: end, share: 1 }];
  return stops.slice(1).map(({ node, share }, k): Piece => {
    const before = stops[k] ?? { node: start, share: 0 };
    const middle = middleOf(bound, [at(before.node), at(node)], share - before.share);
    const shares = { startShare: before.share, endShare: share };
    return { bound: index, from: before.node, to: node, ...shares, middle };
  });
}

/** Visits the pairs of edges of two figures with boxes that overlap or touch. */
function forEachPair(
  bounds: readonly Bound[],
  near: number,
  visit: (i: number, j: number) => void,
): void {
  const order = bounds.map((_, index) => index);
  const boxOf = (index: number) => bounds[index]?.box ?? NO_BOX;
  order.sort((a, b) => boxOf(a).west - boxOf(b).west);
  order.forEach((i, place) => {
    const box = boxOf(i);
    for (let k = place + 1; k < order.length; k += 1) {
      const j = order[k] ?? i;
      const other = boxOf(j);
      if (other.west > box.east + near) break;
      if (other.south > box.north + near || box.south > other.north + near) continue;
      if (bounds[i]?.figure !== bounds[j]?.figure) visit(i, j);
    }
  });
}

const NO_BOX = { west: 0, south: 0, east: 0, north: 0 };

/** Keeps nodes that are apart, and finds them again by the grid square they are in. */
function makeNodes(near: number) {
  const all: Node[] = [];
  const squares = new Map<string, number[]>();
  const side = 8 * near;
  const keysRound = ({ x, y }: Spot, reach: number): string[] => {
    const keys: string[] = [];
    const [east, north] = [Math.floor((x + reach) / side), Math.floor((y + reach) / side)];
    for (let column = Math.floor((x - reach) / side); column <= east; column += 1) {
      for (let row = Math.floor((y - reach) / side); row <= north; row += 1) {
        keys.push(`${column} ${row}`);
      }
    }
    return keys;
  };
  const isNear = (node: number, { x, y }: Spot): boolean => {
    const at = all[node];
    return at !== undefined && Math.abs(at.x - x) <= near && Math.abs(at.y - y) <= near;
  };
  return {
    all,
    at: (node: number): Node => all[node] ?? { x: 0, y: 0 },
    put(made: Node): number {
      for (const key of keysRound(made, near)) {
        const found = squares.get(key)?.find((node) => isNear(node, made));
        if (found !== undefined) return found;
      }
      for (const key of keysRound(made, 0)) {
        squares.set(key, [...(squares.get(key) ?? []), all.length]);
      }
      all.push(made);
      return all.length - 1;
    },
  };
}
