import { boundsOf } from '../bounds.js';
import { fault } from '../../errors.js';
import { floatSites } from '../ring/float-sites.js';
import { sweepForCrossing } from '../ring/sweep-for-crossing.js';
import { constrain, label } from './constrain.js';
import { checkFloats, type Origin } from './read-surface.js';
import { triangulate, type Triangulation } from './triangulation.js';
import { at } from '../floats.js';

/** The plane cut into triangles along an outline, well past all that is measured. Internal. */
export interface OutlineMesh extends Triangulation {
  /** 1 for each triangle inside the outline, 0 outside and in its holes. */
  readonly inside: Int32Array;
}

/** Rings of an outline, moved to the origin and free of repeated points. Internal. */
export interface Rings {
  readonly rings: readonly Float64Array[];
  /** Area inside the outer ring and outside the holes, up to the arcs. */
  readonly area: number;
  /**
   * What lies between chords and the arcs that they stand for: middle and area of each, in turn
   * x, y, area; the area is negative where the arc bulges inward.
   */
  readonly bows: Float64Array;
}

const NO_BOWS = new Float64Array(0);

/**
 * Reads an outline: an outer ring, or a list of it and the rings of its holes, in any direction,
 * closed by themselves; and the bows of its arcs, which are seen from the origin. Internal.
 */
export function readRings(value: unknown, origin: Origin, bows: Float64Array = NO_BOWS): Rings {
  const list: readonly unknown[] = Array.isArray(value) ? value : [value];
  if (list.length === 0) throw fault('EMPTY_LIST', 'the list is empty', {}, ['outline']);
  const rings: Float64Array[] = [];
  // by number: a list with holes has no ring there
  for (let index = 0; index < list.length; index += 1) {
    const ring = list[index];
    const path = Array.isArray(value) ? ['outline', index] : ['outline'];
    checkFloats(ring, path, { stride: 2, words: 'x and y of each point in turn' });
    rings.push(withoutRepeats(ring, origin));
  }
  for (const ring of rings) {
    if (ring.length >= 6) continue;
    throw fault('TOO_FEW', 'an outline needs three points or more', {}, ['outline']);
  }
  const crossing = sweepForCrossing(floatSites(rings));
  if (crossing !== undefined) {
    const { first, second, ring, otherRing } = crossing;
    const where = rings.length > 1 ? ` (rings ${ring} and ${otherRing})` : '';
    const words = `edges ${first} and ${second}${where} of the outline cross or touch`;
    throw fault('SELF_INTERSECTION', words, { first, second, ring, otherRing }, ['outline']);
  }
  const [outer = 0, ...holes] = rings.map((ring) => Math.abs(areaOfRing(ring)));
  if (!(outer > 0)) throw fault('ZERO_AREA', 'the outline encloses nothing', {}, ['outline']);
  let area = holes.reduce((rest, hole) => rest - hole, outer);
  for (let k = 2; k < bows.length; k += 3) area += at(bows, k);
  return { rings, area, bows };
}

/** Points no further apart than this [metres] along x and y count as one: the triangulation drops them. */
const ONE_PLACE = 2 ** -52;

function withoutRepeats(ring: Float64Array, origin: Origin): Float64Array {
  const points: number[] = [];
  const isAt = (x = NaN, y = NaN, otherX = NaN, otherY = NaN): boolean =>
    Math.abs(x - otherX) <= ONE_PLACE && Math.abs(y - otherY) <= ONE_PLACE;
  for (let k = 0; k < ring.length; k += 2) {
    const x = at(ring, k) - origin.x;
    const y = at(ring, k + 1) - origin.y;
    if (!isAt(points.at(-2), points.at(-1), x, y)) points.push(x, y);
  }
  while (points.length > 2 && isAt(points.at(-2), points.at(-1), points[0], points[1])) {
    points.length -= 2;
  }
  return Float64Array.from(points);
}

function areaOfRing(ring: Float64Array): number {
  const x0 = at(ring, 0);
  const y0 = at(ring, 1);
  let double = 0;
  for (let k = 2; k + 3 < ring.length; k += 2) {
    const px = at(ring, k) - x0;
    const py = at(ring, k + 1) - y0;
    const qx = at(ring, k + 2) - x0;
    const qy = at(ring, k + 3) - y0;
    double += px * qy - py * qx;
  }
  return double / 2;
}

/**
 * Triangulates the plane along the edges of an outline, out to a frame round the outline and the
 * points of a surface. Internal.
 */
export function meshOutline({ rings }: Rings, surface: Float64Array): OutlineMesh {
  const frame = frameRound([...rings, surface]);
  const length = rings.reduce((sum, ring) => sum + ring.length, 0);
  const xy = new Float64Array(length + 8);
  const next = new Int32Array(length / 2 + 4).fill(-1);
  const ringOf = new Int32Array(length / 2 + 4).fill(-1);
  let count = 0;
  rings.forEach((ring, number) => {
    xy.set(ring, 2 * count);
    const [first, size] = [count, ring.length / 2];
    for (let k = 0; k < size; k += 1) {
      next[first + k] = first + ((k + 1) % size);
      ringOf[first + k] = number;
    }
    count += size;
  });
  xy.set(frame, length);
  const { hull, ...mesh } = triangulate(xy);
  // as many triangles as points, whose outer ones are the hull, can have: else one was dropped
  if (mesh.triangles.length / 3 !== xy.length - 2 - hull.length) {
    const words = 'the outline comes so close to itself that floats cannot tell its edges apart';
    throw fault('SELF_INTERSECTION', words, {}, ['outline']);
  }
  constrain(mesh, edgesOf(next));
  const start = mesh.triangles.indexOf(hull[0] ?? 0);
  const inside = label(mesh, { triangle: (start / 3) | 0, region: OUTSIDE }, (region, a, b) =>
    next[a] === b || next[b] === a ? beyond(region, ringOf[a] ?? 0) : region,
  );
  for (let t = 0; t < inside.length; t += 1) inside[t] = inside[t] === INSIDE ? 1 : 0;
  return { inside, ...mesh };
}

const [OUTSIDE, INSIDE] = [0, 1] as const;

/** The region on the other side of a ring: ring 0 bounds the outline, ring n > 0 the hole n + 1. */
function beyond(region: number, ring: number): number {
  if (ring === 0 && region <= INSIDE) return region === OUTSIDE ? INSIDE : OUTSIDE;
  if (ring > 0 && region === INSIDE) return ring + 1;
  if (ring > 0 && region === ring + 1) return INSIDE;
  const hole = Math.max(ring, region - 1) - 1;
  const words = 'a hole must lie inside the outline, clear of other holes';
  throw fault('HOLE_OUTSIDE', words, { hole }, ['outline', hole + 1]);
}

function* edgesOf(next: Int32Array): Generator<readonly [number, number]> {
  for (let k = 0; k < next.length; k += 1) {
    const to = next[k] ?? -1;
    if (to >= 0) yield [k, to];
  }
}

/** Four corners of a square well outside all points. */
function frameRound(lists: readonly Float64Array[]): Float64Array {
  const { west, south, east, north } = boundsOf(lists);
  const margin = Math.max(east - west, north - south);
  const [w, s, e, n] = [west - margin, south - margin, east + margin, north + margin];
  return Float64Array.of(w, s, e, s, e, n, w, n);
}
