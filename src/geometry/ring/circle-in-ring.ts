import type { FloatRing } from './zone-area.js';

/**
 * Area [m2] of a circle about the origin within a closed line of straight edges, in floats. It is the
 * sum over the edges of the area between the centre and the edge: a triangle `(a x b) / 2` within the
 * circle, a sector `r^2 angle / 2` beyond it. The error is about 1e-15 of the area of the circle for
 * each edge. Internal.
 */
export function circleInRing(ring: FloatRing, radius: number): number {
  let sum = 0;
  const count = ring.length;
  for (let k = 0; k + 1 < count; k += 2) {
    const from = { x: ring[k] ?? 0, y: ring[k + 1] ?? 0 };
    const to = { x: ring[(k + 2) % count] ?? 0, y: ring[(k + 3) % count] ?? 0 };
    sum += underEdge(from, to, radius);
  }
  return Math.abs(sum);
}

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Signed area of the circle between its centre and an edge. */
function underEdge(a: Point, b: Point, radius: number): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const square = dx * dx + dy * dy;
  const along = a.x * dx + a.y * dy;
  const off = (a.x * dy - a.y * dx) ** 2;
  // the square of half the chord times the square of the edge
  const chord = radius * radius * square - off;
  if (chord <= 0) return sector(a, b, radius);
  const root = Math.sqrt(chord);
  const enter = Math.max((-along - root) / square, 0);
  const leave = Math.min((-along + root) / square, 1);
  if (enter >= leave) return sector(a, b, radius);
  const first = { x: a.x + enter * dx, y: a.y + enter * dy };
  const last = { x: a.x + leave * dx, y: a.y + leave * dy };
  const triangle = (first.x * last.y - first.y * last.x) / 2;
  return sector(a, first, radius) + triangle + sector(last, b, radius);
}

const sector = (a: Point, b: Point, radius: number): number =>
  (radius * radius * Math.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y)) / 2;
