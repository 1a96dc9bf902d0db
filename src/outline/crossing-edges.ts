import { compareRatios, ratioToNumber, signOfRatio, type Ratio } from '../units/ratio.js';
import { cross, dot, minus, type Vector } from '../units/vector.js';
import { forEachEdge } from './ring.js';
import { sweepForCrossing } from './sweep-for-crossing.js';

/** Eight units of float rounding: more than an orientation can lose. */
const ROUNDING = 8 * Number.EPSILON;
/** Up to here every pair of edges is looked at, exactly; beyond (arcs in chords) a sweep does it. */
const MOST_PAIRED = 1000;

/** Two edges that cross or touch, and the rings they belong to. Internal. */
export interface CrossingEdges {
  readonly first: number;
  readonly second: number;
  readonly ring: number;
  readonly otherRing: number;
}

/**
 * Finds two edges of closed rings that cross or touch, other than neighbours at their common point.
 * Floats decide where they can, exact decimals where they cannot. Internal.
 *
 * @returns the two edges, or undefined where every ring is simple and apart from the others
 */
export function crossingEdges(rings: readonly (readonly Vector[])[]): CrossingEdges | undefined {
  const count = rings.reduce((sum, ring) => sum + ring.length, 0);
  if (count > MOST_PAIRED) return sweepForCrossing(rings.map(floats));
  const edges = rings.flatMap(edgesOf);
  for (let i = 0; i < edges.length; i += 1) {
    for (let j = i + 1; j < edges.length; j += 1) {
      const [a, b] = [edges[i], edges[j]];
      if (a === undefined || b === undefined || !edgesMeet(a, b)) continue;
      return { first: a.index, second: b.index, ring: a.ring, otherRing: b.ring };
    }
  }
  return undefined;
}

const floats = (ring: readonly Vector[]): Float64Array =>
  Float64Array.from(ring.flatMap(({ x, y }) => [ratioToNumber(x), ratioToNumber(y)]));

interface Edge {
  readonly ring: number;
  readonly index: number;
  readonly isLast: boolean;
  readonly from: Vector;
  readonly to: Vector;
  readonly box: readonly [number, number, number, number];
}

function edgesOf(points: readonly Vector[], ring: number): Edge[] {
  const edges: Edge[] = [];
  forEachEdge(points, (from, to, index) => {
    const [x1, y1] = [ratioToNumber(from.x), ratioToNumber(from.y)];
    const [x2, y2] = [ratioToNumber(to.x), ratioToNumber(to.y)];
    const box = [Math.min(x1, x2), Math.min(y1, y2), Math.max(x1, x2), Math.max(y1, y2)] as const;
    edges.push({ ring, index, isLast: index === points.length - 1, from, to, box });
  });
  return edges;
}

function edgesMeet(a: Edge, b: Edge): boolean {
  if (!boxesTouch(a.box, b.box)) return false;
  if (a.ring !== b.ring) return segmentsMeet(a, b);
  const isNext = b.index === a.index + 1;
  const closes = a.index === 0 && b.isLast;
  if (isNext && foldsBack(a, b)) return true;
  if (closes && foldsBack(b, a)) return true;
  return isNext || closes ? false : segmentsMeet(a, b);
}

const boxesTouch = (a: Edge['box'], b: Edge['box']): boolean =>
  a[0] <= b[2] && b[0] <= a[2] && a[1] <= b[3] && b[1] <= a[3];

/** Neighbours share a point; they only clash where the second runs back over the first. */
function foldsBack(first: Edge, second: Edge): boolean {
  if (orientation(first.from, first.to, second.to) !== 0) return false;
  return signOfRatio(dot(minus(first.to, first.from), minus(second.to, second.from))) < 0;
}

function segmentsMeet(a: Edge, b: Edge): boolean {
  const o1 = orientation(a.from, a.to, b.from);
  const o2 = orientation(a.from, a.to, b.to);
  const o3 = orientation(b.from, b.to, a.from);
  const o4 = orientation(b.from, b.to, a.to);
  if (o1 * o2 < 0 && o3 * o4 < 0) return true;
  return (
    (o1 === 0 && isWithin(a, b.from)) ||
    (o2 === 0 && isWithin(a, b.to)) ||
    (o3 === 0 && isWithin(b, a.from)) ||
    (o4 === 0 && isWithin(b, a.to))
  );
}

/** Side of the line p-q on which r lies: 1 left, -1 right, 0 on it, exactly. */
function orientation(p: Vector, q: Vector, r: Vector): -1 | 0 | 1 {
  const [px, py] = [ratioToNumber(p.x), ratioToNumber(p.y)];
  const [qx, qy] = [ratioToNumber(q.x) - px, ratioToNumber(q.y) - py];
  const [rx, ry] = [ratioToNumber(r.x) - px, ratioToNumber(r.y) - py];
  const left = qx * ry;
  const right = qy * rx;
  // rounding of the coordinates (each within half a unit in the last place) and of the products
  const largest = Math.max(Math.abs(px), Math.abs(py)) + reach(qx, qy, rx, ry);
  const doubt = ROUNDING * (largest * reach(qx, qy, rx, ry) + Math.abs(left) + Math.abs(right));
  if (Math.abs(left - right) > doubt) return left > right ? 1 : -1;
  return signOfRatio(cross(minus(q, p), minus(r, p)));
}

const reach = (a: number, b: number, c: number, d: number): number =>
  Math.abs(a) + Math.abs(b) + Math.abs(c) + Math.abs(d);

function isWithin({ from, to }: Edge, p: Vector): boolean {
  return isBetween(from.x, to.x, p.x) && isBetween(from.y, to.y, p.y);
}

/** True where a value lies between two others or on one of them. Internal. */
export const isBetween = (a: Ratio, b: Ratio, value: Ratio): boolean =>
  compareRatios(value, a) * compareRatios(value, b) <= 0;
