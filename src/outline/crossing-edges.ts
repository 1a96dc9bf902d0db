import { compareRatios, signOfRatio, ratioToNumber, type Ratio } from '../units/ratio.js';
import { cross, dot, minus, type Vector } from '../units/vector.js';

/** Eight units of float rounding: more than an orientation can lose. */
const ROUNDING = 8 * Number.EPSILON;

/**
 * Finds two edges of a closed outline that cross or touch, other than neighbours at their common
 * point. Floats decide where they can, exact decimals where they cannot. Internal.
 *
 * @returns the indices of the two edges, or undefined for a simple outline
 */
export function crossingEdges(points: readonly Vector[]): readonly [number, number] | undefined {
  const edges = points.map((from, index) =>
    makeEdge(from, points[(index + 1) % points.length] ?? from),
  );
  for (let i = 0; i < edges.length; i += 1) {
    for (let j = i + 1; j < edges.length; j += 1) {
      if (edgesMeet(edges, i, j)) return [i, j];
    }
  }
  return undefined;
}

interface Edge {
  readonly from: Vector;
  readonly to: Vector;
  readonly box: readonly [number, number, number, number];
}

function makeEdge(from: Vector, to: Vector): Edge {
  const [x1, y1] = [ratioToNumber(from.x), ratioToNumber(from.y)];
  const [x2, y2] = [ratioToNumber(to.x), ratioToNumber(to.y)];
  return {
    from,
    to,
    box: [Math.min(x1, x2), Math.min(y1, y2), Math.max(x1, x2), Math.max(y1, y2)],
  };
}

function edgesMeet(edges: readonly Edge[], i: number, j: number): boolean {
  const [a, b] = [edges[i], edges[j]];
  if (a === undefined || b === undefined || !boxesTouch(a.box, b.box)) return false;
  if (j === i + 1) return foldsBack(a, b);
  if (i === 0 && j === edges.length - 1) return foldsBack(b, a);
  return segmentsMeet(a, b);
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
