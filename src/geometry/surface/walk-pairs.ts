import { commonPoint } from './common-point.js';
import { makeGatherer } from './gather.js';
import { holds } from './locate.js';
import { makeMeeting, type Meeting } from './meeting.js';
import { across, type Triangulation } from './triangulation.js';
import { at } from '../floats.js';

/**
 * Visits each triangle of `a` that shares area with `b`, with the triangles of `b` that it shares
 * area with. Both meshes are convex, so that all such pairs hang together and are found from one of
 * them: the time grows with the number of pairs. Internal.
 *
 * @returns false where the meshes share no area
 */
export function walkPairs(
  a: Triangulation,
  b: Triangulation,
  visit: (i: number, overlapped: readonly number[]) => void,
): boolean {
  const meeting = makeMeeting(a, b);
  const first = firstPair(a, b, meeting);
  if (first === undefined) return false;
  const { gather } = makeGatherer(meeting, b);
  /** A triangle of b that each triangle of a shares area with; -1 where none is known yet. */
  const seeds = new Int32Array(a.triangles.length / 3).fill(-1);
  seeds[first[0]] = first[1];
  const waiting = [first[0]];
  for (let i = waiting.pop(); i !== undefined; i = waiting.pop()) {
    const overlapped = gather(i, seeds[i] ?? 0, 1);
    visit(i, overlapped);
    for (let k = 0; k < 3; k += 1) {
      const next = across(a, i, k);
      if (next < 0 || seeds[next] !== -1) continue;
      meeting.take(next);
      const seed = seedFor(meeting, b, overlapped);
      if (seed < 0) continue;
      seeds[next] = seed;
      waiting.push(next);
    }
  }
  return true;
}

/**
 * A triangle of b that shares area with the triangle taken up. Where its neighbour's pairs do not hold
 * one, an edge of both meshes lies between: then one of the triangles across does.
 */
function seedFor(meeting: Meeting, b: Triangulation, near: readonly number[]): number {
  for (const j of near) if (meeting.of(j) > 0) return j;
  for (const j of near) {
    for (let k = 0; k < 3; k += 1) {
      const beyond = across(b, j, k);
      if (beyond >= 0 && meeting.of(beyond) > 0) return beyond;
    }
  }
  return -1;
}

function firstPair(
  a: Triangulation,
  b: Triangulation,
  meeting: Meeting,
): readonly [number, number] | undefined {
  const point = commonPoint(hullOf(a), hullOf(b));
  if (point === undefined) return undefined;
  const [i] = holding(a, point, 1);
  if (i === undefined) return undefined;
  meeting.take(i);
  const j = holding(b, point).find((candidate) => meeting.of(candidate) > 0);
  return j === undefined ? undefined : [i, j];
}

/** The triangles that hold a point: several where it lies on an edge. */
function holding(
  mesh: Triangulation,
  [x, y]: readonly [number, number],
  most = Infinity,
): number[] {
  const found: number[] = [];
  for (let t = 0; t < mesh.triangles.length / 3 && found.length < most; t += 1) {
    if (holds(mesh, t, x, y)) found.push(t);
  }
  return found;
}

/** The corners of the edges without a neighbour, in no order: what a hull's span needs. */
function hullOf({ xy, triangles, halfedges }: Triangulation): Float64Array {
  const next = new Map<number, number>();
  halfedges.forEach((opposite, edge) => {
    if (opposite >= 0) return;
    next.set(triangles[edge] ?? 0, triangles[edge % 3 === 2 ? edge - 2 : edge + 1] ?? 0);
  });
  const ring = new Float64Array(2 * next.size);
  let [point] = next.keys();
  for (let k = 0; k < next.size && point !== undefined; k += 1) {
    ring[2 * k] = at(xy, 2 * point);
    ring[2 * k + 1] = at(xy, 2 * point + 1);
    point = next.get(point);
  }
  return ring;
}
