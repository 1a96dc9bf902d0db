import type { Decimal } from '../units/decimal.js';
import { cross, minus, type Vector } from '../units/vector.js';

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
  const [x1, y1, x2, y2] = [from.x, from.y, to.x, to.y].map((value) => value.toNumber()) as [
    number,
    number,
    number,
    number,
  ];
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
  const along = minus(first.to, first.from);
  const next = minus(second.to, second.from);
  return along.x.times(next.x).plus(along.y.times(next.y)).isNegative();
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
  const [px, py] = [p.x.toNumber(), p.y.toNumber()];
  const [qx, qy] = [q.x.toNumber() - px, q.y.toNumber() - py];
  const [rx, ry] = [r.x.toNumber() - px, r.y.toNumber() - py];
  const left = qx * ry;
  const right = qy * rx;
  // rounding of the coordinates (each within half a unit in the last place) and of the products
  const largest = Math.max(Math.abs(px), Math.abs(py)) + reach(qx, qy, rx, ry);
  const doubt = ROUNDING * (largest * reach(qx, qy, rx, ry) + Math.abs(left) + Math.abs(right));
  if (Math.abs(left - right) > doubt) return left > right ? 1 : -1;
  return signOf(cross(minus(q, p), minus(r, p)));
}

const reach = (a: number, b: number, c: number, d: number): number =>
  Math.abs(a) + Math.abs(b) + Math.abs(c) + Math.abs(d);

const signOf = (value: Decimal): -1 | 0 | 1 => value.cmp(0) as -1 | 0 | 1;

function isWithin({ from, to }: Edge, p: Vector): boolean {
  return between(from.x, to.x, p.x) && between(from.y, to.y, p.y);
}

const between = (a: Decimal, b: Decimal, value: Decimal): boolean =>
  a.lte(b) ? value.gte(a) && value.lte(b) : value.gte(b) && value.lte(a);
