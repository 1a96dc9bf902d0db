import { across, corner, inner, type Triangulation } from './triangulation.js';
import { at } from '../floats.js';

const nextEdge = (edge: number): number => (edge % 3 === 2 ? edge - 2 : edge + 1);
const previousEdge = (edge: number): number => (edge % 3 === 0 ? edge + 2 : edge - 1);

const areOpposite = (a: number, b: number): boolean => (a > 0 && b < 0) || (a < 0 && b > 0);

/**
 * Makes edges between pairs of points part of a triangulation, in place, by turning the diagonals
 * that cross them (after Sloan). Each point must lie inside the hull; no edge may cross another or
 * touch a point that is not its end. All decisions are exact. Internal.
 */
export function constrain(mesh: Triangulation, edges: Iterable<readonly [number, number]>): void {
  const { xy, triangles, halfedges } = mesh;
  /** An edge that leaves each point. */
  const leaving = new Int32Array(xy.length >> 1);
  triangles.forEach((point, edge) => (leaving[point] = edge));

  const point = (edge: number): number => triangles[edge] ?? 0;
  const twin = (edge: number): number => halfedges[edge] ?? -1;
  const side = (a: number, b: number, p: number): number =>
    inner(mesh, a, b, at(xy, 2 * p), at(xy, 2 * p + 1));

  const after = (edge: number): number => twin(previousEdge(edge));
  /** The edges that leave a point, in their order round it. */
  function around(start: number): readonly number[] {
    const first = leaving[start] ?? 0;
    const found = [first];
    for (let edge = after(first); edge !== first && edge >= 0; edge = after(edge)) found.push(edge);
    return found;
  }

  /** One of two points may be on the hull, where not all its edges are gone round. */
  function edgeBetween(a: number, b: number): number {
    for (const edge of around(a)) if (point(nextEdge(edge)) === b) return edge;
    for (const edge of around(b)) if (point(nextEdge(edge)) === a) return twin(edge);
    return -1;
  }

  /** The edges that the segment from a to b crosses, as pairs of points. */
  function crossed(a: number, b: number): [number, number][] {
    const found: [number, number][] = [];
    let edge = -1;
    for (const out of around(a)) {
      const [u, v] = [point(nextEdge(out)), point(previousEdge(out))];
      if (u === b || v === b) return found;
      if (side(a, u, b) > 0 && side(v, a, b) > 0) edge = nextEdge(out);
    }
    while (edge >= 0) {
      found.push([point(edge), point(nextEdge(edge))]);
      const beyond = twin(edge);
      const apex = point(previousEdge(beyond));
      if (apex === b) break;
      // on through the edge whose ends lie on two sides
      const from = point(nextEdge(beyond));
      edge =
        side(a, b, from) > 0 === side(a, b, apex) > 0 ? previousEdge(beyond) : nextEdge(beyond);
    }
    return found;
  }

  function link(edge: number, other: number): void {
    halfedges[edge] = other;
    if (other >= 0) halfedges[other] = edge;
  }

  /** Turns the diagonal of two triangles; it then joins their other corners. */
  function turn(edge: number): void {
    const other = twin(edge);
    const before = previousEdge(edge);
    const otherBefore = previousEdge(other);
    const apex = point(before);
    const otherApex = point(otherBefore);
    const start = point(edge);
    const end = point(other);
    triangles[edge] = otherApex;
    triangles[other] = apex;
    link(edge, twin(otherBefore));
    link(other, twin(before));
    link(before, otherBefore);
    leaving[start] = nextEdge(other);
    leaving[end] = nextEdge(edge);
    leaving[apex] = before;
    leaving[otherApex] = otherBefore;
  }

  for (const [a, b] of edges) {
    const waiting = crossed(a, b);
    // the list grows while it is gone through
    for (const [u, v] of waiting) {
      const edge = edgeBetween(u, v);
      const p = point(previousEdge(edge));
      const q = point(previousEdge(twin(edge)));
      const isConvex = areOpposite(side(p, q, u), side(p, q, v));
      if (!isConvex) {
        waiting.push([u, v]);
        continue;
      }
      turn(edge);
      // a corner at an end of the new edge lies on its line
      if (areOpposite(side(a, b, p), side(a, b, q))) {
        waiting.push([p, q]);
      }
    }
  }
}

/**
 * Numbers the triangles by region: those that can be reached from a first one without crossing a
 * line keep its number; each line crossed gives the number that `beyond` says. Internal.
 */
export function label(
  mesh: Triangulation,
  start: { readonly triangle: number; readonly region: number },
  beyond: (region: number, a: number, b: number) => number,
): Int32Array {
  const regions = new Int32Array(mesh.triangles.length / 3).fill(-1);
  const waiting = [start.triangle];
  regions[start.triangle] = start.region;
  for (let triangle = waiting.pop(); triangle !== undefined; triangle = waiting.pop()) {
    for (let k = 0; k < 3; k += 1) {
      const other = across(mesh, triangle, k);
      if (other < 0 || regions[other] !== -1) continue;
      const [a, b] = [corner(mesh, triangle, k), corner(mesh, triangle, (k + 1) % 3)];
      regions[other] = beyond(regions[triangle] ?? 0, a, b);
      waiting.push(other);
    }
  }
  return regions;
}
