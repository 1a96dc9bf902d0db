import { at } from '../floats.js';
import { openEdges } from './open-edges.js';
import { inner, type Parts, type Triangulation } from './triangulation.js';

/** Up to so many points on one circle are joined from each of them in turn. */
const MOST_FANS = 8;
/** Of the largest height: a difference that rounding can make. */
const SAME_HEIGHT = 16 * Number.EPSILON;

/**
 * The parts of a surface of Delaunay triangles, undefined where all its triangles are the only ones.
 * Points on one circle are joined in fans: from each point where there are up to eight, which for four
 * means along both diagonals; else from those that lie furthest out along x and y. So no way hangs on
 * the order of the points, nor on which way the site is turned. Internal.
 *
 * @param grain - the last digit of the coordinates
 */
export function partsOf(mesh: Triangulation, z: Float64Array, grain: number): Parts | undefined {
  const edges = openEdges(mesh, grain);
  if (edges.length === 0) return undefined;
  const rings: { group: readonly number[]; ring: Uint32Array }[] = [];
  for (const group of groupsOf(mesh, edges)) {
    const ring = ringOf(mesh, group);
    if (ring !== undefined && !isPlane(mesh, z, ring)) rings.push({ group, ring });
  }
  if (rings.length === 0) return undefined;
  const partOf = new Int32Array(mesh.triangles.length / 3).fill(-1);
  rings.forEach(({ group }, part) => {
    for (const triangle of group) partOf[triangle] = part;
  });
  return drawn(
    mesh,
    partOf,
    rings.map(({ ring }) => ring),
  );
}

/** The triangles that hang together through open edges. */
function groupsOf(mesh: Triangulation, edges: readonly number[]): number[][] {
  const beside = mesh.halfedges;
  /** The open half-edges, from both sides. */
  const isOpen = new Uint8Array(beside.length);
  for (const edge of edges) {
    isOpen[edge] = 1;
    isOpen[beside[edge] ?? 0] = 1;
  }
  const isTaken = new Uint8Array(beside.length / 3);
  const groups: number[][] = [];
  for (const start of edges) {
    const first = (start / 3) | 0;
    if (isTaken[first] === 1) continue;
    isTaken[first] = 1;
    const group = [first];
    // the list grows while it is gone through
    for (const triangle of group) {
      for (let edge = 3 * triangle; edge < 3 * triangle + 3; edge += 1) {
        const other = ((beside[edge] ?? 0) / 3) | 0;
        if (isOpen[edge] === 0 || isTaken[other] === 1) continue;
        isTaken[other] = 1;
        group.push(other);
      }
    }
    groups.push(group);
  }
  return groups;
}

/** The points round some triangles in turn; undefined where they are not convex by more than rounding. */
function ringOf(mesh: Triangulation, group: readonly number[]): Uint32Array | undefined {
  const { xy, triangles, halfedges } = mesh;
  const own = group.length > 8 ? new Set(group) : { has: (one: number) => group.includes(one) };
  const next = new Map<number, number>();
  for (const triangle of group) {
    for (let edge = 3 * triangle; edge < 3 * triangle + 3; edge += 1) {
      const other = halfedges[edge] ?? -1;
      if (other >= 0 && own.has((other / 3) | 0)) continue;
      next.set(triangles[edge] ?? 0, triangles[edge % 3 === 2 ? edge - 2 : edge + 1] ?? 0);
    }
  }
  const ring = new Uint32Array(group.length + 2);
  if (next.size !== ring.length) return undefined;
  let point = triangles[3 * (group[0] ?? 0)] ?? 0;
  for (let k = 0; k < ring.length; k += 1) {
    ring[k] = point;
    point = next.get(point) ?? 0;
  }
  const isConvex = ring.every((b, k) => {
    const a = ring[(k + ring.length - 1) % ring.length] ?? 0;
    const c = ring[(k + 1) % ring.length] ?? 0;
    return inner(mesh, a, b, at(xy, 2 * c), at(xy, 2 * c + 1)) > 0;
  });
  return isConvex ? ring : undefined;
}

/** True for points in one plane: however they are joined, the surface is the same. */
function isPlane({ xy }: Triangulation, z: Float64Array, ring: Uint32Array): boolean {
  const [a = 0, b = 0, c = 0] = ring;
  const [x0, y0, z0] = [at(xy, 2 * a), at(xy, 2 * a + 1), at(z, a)];
  const [bx, by, bz] = [at(xy, 2 * b) - x0, at(xy, 2 * b + 1) - y0, at(z, b) - z0];
  const [cx, cy, cz] = [at(xy, 2 * c) - x0, at(xy, 2 * c + 1) - y0, at(z, c) - z0];
  const double = bx * cy - by * cx;
  const gradeX = (bz * cy - by * cz) / double;
  const gradeY = (bx * cz - bz * cx) / double;
  return ring.every((point) => {
    const alongX = gradeX * (at(xy, 2 * point) - x0);
    const alongY = gradeY * (at(xy, 2 * point + 1) - y0);
    const size = Math.abs(z0) + Math.abs(at(z, point)) + Math.abs(alongX) + Math.abs(alongY);
    return Math.abs(at(z, point) - z0 - alongX - alongY) <= SAME_HEIGHT * size;
  });
}

/** Numbers the triangles of all ways: parts of several ways first, then single triangles. */
function drawn(
  { xy, triangles }: Triangulation,
  partOf: Int32Array,
  rings: readonly Uint32Array[],
): Parts {
  const fans = rings.map((ring) => fansOf(xy, ring));
  const singles = partOf.reduce((count, part) => (part < 0 ? count + 1 : count), 0);
  const inFans = rings.reduce(
    (sum, ring, k) => sum + (fans[k]?.length ?? 0) * (ring.length - 2),
    0,
  );
  const parts = {
    triangles: new Uint32Array(3 * (inFans + singles)),
    partOf,
    first: new Uint32Array(rings.length + singles),
    ways: new Uint8Array(rings.length + singles).fill(1),
    size: new Uint32Array(rings.length + singles).fill(1),
  };
  let filled = 0;
  rings.forEach((ring, part) => {
    const apexes = fans[part] ?? [];
    parts.first[part] = filled / 3;
    parts.ways[part] = apexes.length;
    parts.size[part] = ring.length - 2;
    for (const apex of apexes) {
      for (let k = 1; k + 1 < ring.length; k += 1) {
        const corners = [apex, apex + k, apex + k + 1];
        for (const corner of corners) parts.triangles[filled++] = ring[corner % ring.length] ?? 0;
      }
    }
  });
  let part = rings.length;
  for (let triangle = 0; triangle < partOf.length; triangle += 1) {
    if ((partOf[triangle] ?? 0) >= 0) continue;
    partOf[triangle] = part;
    parts.first[part] = filled / 3;
    part += 1;
    for (let k = 0; k < 3; k += 1) parts.triangles[filled++] = triangles[3 * triangle + k] ?? 0;
  }
  return parts;
}

/** Where on a ring the fans start that count. */
function fansOf(xy: Float64Array, ring: Uint32Array): number[] {
  // the fans from opposite corners of four are the same
  if (ring.length === 4) return [0, 1];
  const all = Array.from(ring, (_, k) => k);
  if (ring.length <= MOST_FANS) return all;
  const far = [0, 1].flatMap((axis) => {
    const along = Array.from(ring, (point) => at(xy, 2 * point + axis));
    const ends = [Math.min(...along), Math.max(...along)];
    return all.filter((k) => ends.includes(along[k] ?? NaN));
  });
  return [...new Set(far)];
}

/** The parts of a surface whose triangles are the only ones. Internal. */
export function singlesOf({ triangles }: Triangulation): Parts {
  const count = triangles.length / 3;
  const first = new Uint32Array(count).map((_, part) => part);
  const once = { ways: new Uint8Array(count).fill(1), size: new Uint32Array(count).fill(1) };
  return { triangles, partOf: Int32Array.from(first), first, ...once };
}
