import { orient2d } from 'robust-predicates';
import { delaunay } from './delaunay.js';
import { at } from '../floats.js';

/** Triangles over points in plan; each triangle has its inside on the side where `inner` is positive. */
export interface Triangulation {
  /** x and y in turn [metres]. */
  readonly xy: Float64Array;
  /** Three points a triangle. */
  readonly triangles: Uint32Array;
  /** The half-edge on the other side of each half-edge, -1 on the hull. */
  readonly halfedges: Int32Array;
}

/**
 * A surface in parts. Most are one triangle. Where four or more points lie on one circle and not in one
 * plane, the triangles between them are one part, and there are several ways to draw them. Internal.
 */
export interface Parts {
  /** Triangles of all ways of all parts, three points each. */
  readonly triangles: Uint32Array;
  /** The part that each triangle of the surface belongs to. */
  readonly partOf: Int32Array;
  /** The first triangle of each part. */
  readonly first: Uint32Array;
  /** In how many ways a part can be drawn. */
  readonly ways: Uint8Array;
  /** Triangles of one way; those of the next follow. */
  readonly size: Uint32Array;
}

/** A surface of triangles. */
export interface Surface extends Triangulation {
  readonly z: Float64Array;
  /** Its parts where points on one circle leave open how they are joined. */
  readonly parts: Parts | undefined;
}

/** Triangulates points in plan (Delaunay); what lies on one line gives no triangles. Internal. */
export function triangulate(xy: Float64Array): Triangulation & { readonly hull: Uint32Array } {
  const { triangles, halfedges, hull } = delaunay(xy);
  return { xy, triangles, halfedges, hull };
}

/**
 * Positive where p lies on the inner side of the edge from a to b of a triangle, 0 on its line:
 * exact, whatever the coordinates. Internal.
 */
export function inner({ xy }: Triangulation, a: number, b: number, px: number, py: number): number {
  return orient2d(at(xy, 2 * a), at(xy, 2 * a + 1), at(xy, 2 * b), at(xy, 2 * b + 1), px, py);
}

/** Corner k (0 to 2) of a triangle. Internal. */
export const corner = ({ triangles }: Triangulation, triangle: number, k: number): number =>
  triangles[3 * triangle + k] ?? 0;

/** The triangle across side k (from corner k to the next), -1 for none. Internal. */
export function across({ halfedges }: Triangulation, triangle: number, k: number): number {
  const opposite = halfedges[3 * triangle + k] ?? -1;
  return opposite < 0 ? -1 : (opposite / 3) | 0;
}

/** Area of a triangle, not negative. Internal. */
export function areaOf(t: Triangulation, triangle: number): number {
  const { xy } = t;
  const a = 2 * corner(t, triangle, 0);
  const b = 2 * corner(t, triangle, 1);
  const c = 2 * corner(t, triangle, 2);
  const ax = at(xy, a);
  const ay = at(xy, a + 1);
  const double = (at(xy, b) - ax) * (at(xy, c + 1) - ay) - (at(xy, b + 1) - ay) * (at(xy, c) - ax);
  return Math.abs(double) / 2;
}
