import { orient2d } from 'robust-predicates';
import { fault } from '../../errors.js';
import type { FieldPath } from '../../errors.js';
import type { Surface } from './triangulation.js';
import { at } from '../floats.js';

/**
 * Cells along each side of a warped surface. Between their triangles the surface is met to 1/16384
 * of its twist; the whole of a parallelogram is exact.
 */
const CELLS = 32;

/**
 * The surface that is straight along and across between four corners in order, in triangles: each
 * cell in four round its middle, which keeps its volume. Internal.
 *
 * @param corners - x, y and z of each corner in turn
 */
export function meshWarped(corners: Float64Array, path: FieldPath): Surface {
  const turns = [0, 1, 2, 3].map((k) => turnAt(corners, k));
  const isConvex = turns.every((turn) => turn > 0) || turns.every((turn) => turn < 0);
  if (!isConvex) {
    const words = 'the four corners must stand in order round a convex figure';
    throw fault('CORNERS_NOT_CONVEX', words, {}, path);
  }
  const cells = isFlat(corners) ? 1 : CELLS;
  const points: number[] = [];
  const put = (u: number, v: number) => points.push(...onWarped(corners, u / cells, v / cells));
  for (let v = 0; v <= cells; v += 1) for (let u = 0; u <= cells; u += 1) put(u, v);
  for (let v = 0; v < cells; v += 1) for (let u = 0; u < cells; u += 1) put(u + 0.5, v + 0.5);
  const count = points.length / 3;
  const xy = new Float64Array(2 * count);
  const z = new Float64Array(count);
  for (let k = 0; k < count; k += 1) {
    xy.set(points.slice(3 * k, 3 * k + 2), 2 * k);
    z[k] = points[3 * k + 2] ?? 0;
  }
  const triangles = cellTriangles(cells, (turns[0] ?? 0) > 0);
  return { xy, z, triangles, halfedges: halfedgesOf(triangles, count), parts: undefined };
}

/** Which way the ring turns at corner k: the sign that a triangulation has inside. */
function turnAt(corners: Float64Array, k: number): number {
  const [a, b, c] = [3 * k, 3 * ((k + 1) % 4), 3 * ((k + 2) % 4)];
  return orient2d(
    at(corners, a),
    at(corners, a + 1),
    at(corners, b),
    at(corners, b + 1),
    at(corners, c),
    at(corners, c + 1),
  );
}

/** True for a parallelogram without twist: two triangles' worth of cells will do. */
function isFlat(corners: Float64Array): boolean {
  return [0, 1, 2].every(
    (k) => at(corners, k) - at(corners, 3 + k) + at(corners, 6 + k) - at(corners, 9 + k) === 0,
  );
}

/** The place a share u of the way from the first corner to the second and v toward the last. */
function onWarped(corners: Float64Array, u: number, v: number): [number, number, number] {
  const value = (k: number): number => {
    const near = at(corners, k) * (1 - u) + at(corners, 3 + k) * u;
    const far = at(corners, 9 + k) * (1 - u) + at(corners, 6 + k) * u;
    return near * (1 - v) + far * v;
  };
  return [value(0), value(1), value(2)];
}

function cellTriangles(cells: number, runsInner: boolean): Uint32Array {
  const row = cells + 1;
  const triangles: number[] = [];
  for (let v = 0; v < cells; v += 1) {
    for (let u = 0; u < cells; u += 1) {
      const first = v * row + u;
      const middle = row * row + v * cells + u;
      const ring = [first, first + 1, first + row + 1, first + row];
      ring.forEach((a, k) => {
        const b = ring[(k + 1) % 4] ?? 0;
        triangles.push(...(runsInner ? [a, b, middle] : [b, a, middle]));
      });
    }
  }
  return Uint32Array.from(triangles);
}

/** Finds the half-edge across each half-edge. */
function halfedgesOf(triangles: Uint32Array, points: number): Int32Array {
  const halfedges = new Int32Array(triangles.length).fill(-1);
  const open = new Map<number, number>();
  triangles.forEach((a, edge) => {
    const b = triangles[edge % 3 === 2 ? edge - 2 : edge + 1] ?? 0;
    const other = open.get(b * points + a);
    if (other === undefined) open.set(a * points + b, edge);
    else {
      halfedges[edge] = other;
      halfedges[other] = edge;
    }
  });
  return halfedges;
}
