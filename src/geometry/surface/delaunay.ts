/*!
 * Delaunay triangles over points in plan: the algorithm of the package delaunator 5.1.0, carried here with
 * one change (see `flipHullEdge`) and in the style of this library. Its notice:
 *
 * ISC License
 *
 * Copyright (c) 2026, Mapbox
 *
 * Permission to use, copy, modify, and/or distribute this software for any purpose
 * with or without fee is hereby granted, provided that the above copyright notice
 * and this permission notice appear in all copies.
 *
 * THE SOFTWARE IS PROVIDED "AS IS" AND THE AUTHOR DISCLAIMS ALL WARRANTIES WITH
 * REGARD TO THIS SOFTWARE INCLUDING ALL IMPLIED WARRANTIES OF MERCHANTABILITY AND
 * FITNESS. IN NO EVENT SHALL THE AUTHOR BE LIABLE FOR ANY SPECIAL, DIRECT,
 * INDIRECT, OR CONSEQUENTIAL DAMAGES OR ANY DAMAGES WHATSOEVER RESULTING FROM LOSS
 * OF USE, DATA OR PROFITS, WHETHER IN AN ACTION OF CONTRACT, NEGLIGENCE OR OTHER
 * TORTIOUS ACTION, ARISING OUT OF OR IN CONNECTION WITH THE USE OR PERFORMANCE OF
 * THIS SOFTWARE.
 */
import { at } from '../floats.js';
import { circumcentre, seedOf, turn, type Place, type Seed } from './seed-triangle.js';
import { distancesFrom, sortByDistance } from './sort-by-distance.js';

/** Triangles, counter-clockwise seen with y down. Internal. */
export interface Delaunay {
  /** Three points a triangle. */
  readonly triangles: Uint32Array;
  /** The half-edge on the other side of each half-edge, -1 on the hull. */
  readonly halfedges: Int32Array;
  /** The points of the hull in turn; of points on one line all of them, in order. */
  readonly hull: Uint32Array;
}

/** Points no further apart than this along x and y count as one. */
const ONE_PLACE = 2 ** -52;
/** Edges that wait to be looked at. More are dropped: it takes a degenerate figure to come so far. */
const STACK = new Uint32Array(512);

/**
 * Triangulates points: they are added by their distance from a first triangle, each one joined to the
 * edges of the hull that it sees. Points that repeat another are left out. Internal.
 *
 * @param xy - x and y of each point in turn
 */
export function delaunay(xy: Float64Array): Delaunay {
  const seed = seedOf(xy);
  const ids = new Uint32Array(xy.length >> 1).map((_, i) => i);
  if (seed === undefined) return inLine(xy, ids);
  const centre = circumcentre(xy, seed);
  const dists = ids.length === 0 ? EMPTY : distancesFrom(xy, centre);
  sortByDistance(ids, dists, 0, ids.length - 1);
  const growth = startOf(xy, seed, centre);
  addAll(growth, ids, seed);
  return trimmed(growth);
}

const EMPTY = new Float64Array(0);

/** Points on one line: no triangles, and a hull of them in order. */
function inLine(xy: Float64Array, ids: Uint32Array): Delaunay {
  const along = new Float64Array(ids.length);
  for (let i = 0; i < ids.length; i += 1) {
    const dx = at(xy, 2 * i) - at(xy, 0);
    along[i] = dx === 0 ? at(xy, 2 * i + 1) - at(xy, 1) : dx;
  }
  sortByDistance(ids, along, 0, ids.length - 1);
  const hull = ids.filter((id, k) => k === 0 || at(along, id) > at(along, ids[k - 1] ?? 0));
  return { triangles: new Uint32Array(0), halfedges: new Int32Array(0), hull };
}

/** The triangles so far, and the hull about them. */
interface Growth {
  readonly xy: Float64Array;
  readonly triangles: Uint32Array;
  readonly halfedges: Int32Array;
  /** How much of `triangles` is filled. */
  length: number;
  readonly centre: Place;
  readonly previous: Uint32Array;
  /** The point after each on the hull; itself where it lies on the hull no longer. */
  readonly next: Uint32Array;
  /** The half-edge that leaves each point of the hull along it. */
  readonly edge: Uint32Array;
  /** A point of the hull in each direction from the centre, -1 for none. */
  readonly toward: Int32Array;
  /** A point of the hull, and how many there are. */
  start: number;
  size: number;
}

function startOf(xy: Float64Array, [i0, i1, i2]: Seed, centre: Place): Growth {
  const count = xy.length >> 1;
  const most = 3 * Math.max(2 * count - 5, 0);
  const growth: Growth = {
    xy,
    triangles: new Uint32Array(most),
    halfedges: new Int32Array(most),
    length: 0,
    centre,
    previous: new Uint32Array(count),
    next: new Uint32Array(count),
    edge: new Uint32Array(count),
    toward: new Int32Array(Math.ceil(Math.sqrt(count))).fill(-1),
    start: i0,
    size: 3,
  };
  [i0, i1, i2].forEach((point, k) => {
    growth.edge[point] = k;
    growth.toward[directionOf(growth, point)] = point;
  });
  join(growth, i0, i1);
  join(growth, i1, i2);
  join(growth, i2, i0);
  addTriangle(growth, i0, i1, i2, -1, -1, -1);
  return growth;
}

/** Makes two points neighbours on the hull. */
function join({ next, previous }: Growth, from: number, to: number): void {
  next[from] = to;
  previous[to] = from;
}

/** In which of the equal parts of a turn a point lies, seen from the centre; by no true angle. */
function directionOf({ xy, centre, toward }: Growth, point: number): number {
  const dx = at(xy, 2 * point) - centre[0];
  const dy = at(xy, 2 * point + 1) - centre[1];
  const p = dx / (Math.abs(dx) + Math.abs(dy));
  const part = (dy > 0 ? 3 - p : 1 + p) / 4;
  return Math.floor(part * toward.length) % toward.length;
}

function addAll(growth: Growth, ids: Uint32Array, [i0, i1, i2]: Seed): void {
  const { xy } = growth;
  let lastX = NaN;
  let lastY = NaN;
  for (const i of ids) {
    const x = at(xy, 2 * i);
    const y = at(xy, 2 * i + 1);
    if (Math.abs(x - lastX) <= ONE_PLACE && Math.abs(y - lastY) <= ONE_PLACE) continue;
    lastX = x;
    lastY = y;
    if (i !== i0 && i !== i1 && i !== i2) addPoint(growth, i);
  }
}

/** Joins a point to the edges of the hull that it sees; one that sees none repeats another. */
function addPoint(growth: Growth, i: number): void {
  const { xy, next, edge, toward } = growth;
  const start = hullNear(growth, i);
  const first = firstSeen(growth, i, start);
  if (first < 0) return;
  let after = next[first] ?? 0;
  let t = addTriangle(growth, first, i, after, -1, -1, edge[first] ?? 0);
  edge[i] = legalize(growth, t + 2);
  edge[first] = t;
  growth.size += 1;
  const x = at(xy, 2 * i);
  const y = at(xy, 2 * i + 1);
  // onward along the hull
  for (let q = next[after] ?? 0; turn(xy, after, q, x, y) < 0; q = next[after] ?? 0) {
    t = addTriangle(growth, after, i, q, edge[i] ?? 0, -1, edge[after] ?? 0);
    edge[i] = legalize(growth, t + 2);
    next[after] = after;
    growth.size -= 1;
    after = q;
  }
  const before = first === start ? addBackward(growth, i, first) : first;
  growth.start = before;
  join(growth, before, i);
  join(growth, i, after);
  toward[directionOf(growth, i)] = i;
  toward[directionOf(growth, before)] = before;
}

/** The last step back along the hull from a point that is seen; returns the first point that stays. */
function addBackward(growth: Growth, i: number, from: number): number {
  const { xy, next, previous, edge } = growth;
  const x = at(xy, 2 * i);
  const y = at(xy, 2 * i + 1);
  let first = from;
  for (let q = previous[first] ?? 0; turn(xy, q, first, x, y) < 0; q = previous[first] ?? 0) {
    const t = addTriangle(growth, q, i, first, -1, edge[first] ?? 0, edge[q] ?? 0);
    legalize(growth, t + 2);
    edge[q] = t;
    next[first] = first;
    growth.size -= 1;
    first = q;
  }
  return first;
}

/** A point of the hull shortly before the direction of a new point. */
function hullNear(growth: Growth, i: number): number {
  const { toward, next, previous, start } = growth;
  const direction = directionOf(growth, i);
  for (let k = 0; k < toward.length; k += 1) {
    const point = toward[(direction + k) % toward.length] ?? -1;
    if (point >= 0 && point !== next[point]) return previous[point] ?? 0;
  }
  return start;
}

/** Where the first edge of the hull begins that a point sees, -1 where it sees none. */
function firstSeen({ xy, next }: Growth, i: number, start: number): number {
  const x = at(xy, 2 * i);
  const y = at(xy, 2 * i + 1);
  let from = start;
  for (let to = next[from] ?? 0; turn(xy, from, to, x, y) >= 0; to = next[from] ?? 0) {
    from = to;
    if (from === start) return -1;
  }
  return from;
}

/**
 * Adds a triangle a, b, c, with the half-edges across its sides ab, bc and ca; returns its first
 * half-edge. Plain numbers, no lists: there are millions of them.
 */
function addTriangle(
  growth: Growth,
  a: number,
  b: number,
  c: number,
  acrossAb: number,
  acrossBc: number,
  acrossCa: number,
): number {
  const { triangles, halfedges, length } = growth;
  triangles[length] = a;
  triangles[length + 1] = b;
  triangles[length + 2] = c;
  link(halfedges, length, acrossAb);
  link(halfedges, length + 1, acrossBc);
  link(halfedges, length + 2, acrossCa);
  growth.length += 3;
  return length;
}

function link(halfedges: Int32Array, one: number, other: number): void {
  halfedges[one] = other;
  if (other !== -1) halfedges[other] = one;
}

/**
 * Turns the diagonal of two triangles over where the one has a corner in the circle of the other, and
 * goes on with the sides behind it. Returns the half-edge that leaves the new point along the hull.
 */
function legalize(growth: Growth, from: number): number {
  const { xy, triangles, halfedges } = growth;
  let waiting = 0;
  let a = from;
  for (;;) {
    const b = halfedges[a] ?? -1;
    const before = previousOf(a);
    const far = b === -1 ? -1 : previousOf(b);
    const isLegal =
      far === -1 ||
      !isInCircle(
        xy,
        triangles[before] ?? 0,
        triangles[a] ?? 0,
        cornerAfter(triangles, a),
        triangles[far] ?? 0,
      );
    if (isLegal) {
      if (waiting === 0) return before;
      waiting -= 1;
      a = STACK[waiting] ?? 0;
      continue;
    }
    flip(growth, a, b);
    if (waiting < STACK.length) {
      STACK[waiting] = nextOf(b);
      waiting += 1;
    }
  }
}

const nextOf = (edge: number): number => (edge % 3 === 2 ? edge - 2 : edge + 1);
const previousOf = (edge: number): number => (edge % 3 === 0 ? edge + 2 : edge - 1);
const cornerAfter = (triangles: Uint32Array, edge: number): number => triangles[nextOf(edge)] ?? 0;

/** Turns the diagonal with the half-edges a and b over. */
function flip(growth: Growth, a: number, b: number): void {
  const { triangles, halfedges } = growth;
  const before = previousOf(a);
  const far = previousOf(b);
  const apex = triangles[far] ?? 0;
  triangles[a] = apex;
  triangles[b] = triangles[before] ?? 0;
  const beyond = halfedges[far] ?? -1;
  if (beyond === -1) flipHullEdge(growth, apex, far, a);
  link(halfedges, a, beyond);
  link(halfedges, b, halfedges[before] ?? -1);
  link(halfedges, before, far);
}

/**
 * An edge of the hull that gets another number. It is that of the point it leaves: the package walks
 * round the whole hull to find it, which takes n^2 steps for points on one circle.
 */
function flipHullEdge({ edge }: Growth, point: number, was: number, is: number): void {
  if (edge[point] === was) edge[point] = is;
}

/** Whether p lies in the circle through a, b and c. */
function isInCircle(xy: Float64Array, a: number, b: number, c: number, p: number): boolean {
  const px = at(xy, 2 * p);
  const py = at(xy, 2 * p + 1);
  const dx = at(xy, 2 * a) - px;
  const dy = at(xy, 2 * a + 1) - py;
  const ex = at(xy, 2 * b) - px;
  const ey = at(xy, 2 * b + 1) - py;
  const fx = at(xy, 2 * c) - px;
  const fy = at(xy, 2 * c + 1) - py;
  const ap = dx * dx + dy * dy;
  const bp = ex * ex + ey * ey;
  const cp = fx * fx + fy * fy;
  return dx * (ey * cp - bp * fy) - dy * (ex * cp - bp * fx) + ap * (ex * fy - ey * fx) < 0;
}

function trimmed({ triangles, halfedges, length, start, size, next }: Growth): Delaunay {
  const hull = new Uint32Array(size);
  let point = start;
  for (let k = 0; k < size; k += 1) {
    hull[k] = point;
    point = next[point] ?? 0;
  }
  return {
    triangles: triangles.subarray(0, length),
    halfedges: halfedges.subarray(0, length),
    hull,
  };
}
