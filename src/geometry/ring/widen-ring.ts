import { fault } from '../../errors.js';
import { FAR, isInRange } from '../floats.js';
import { floatSites } from './float-sites.js';
import { ringCrossing } from './ring-crossing.js';
import { sweepForCrossing } from './sweep-for-crossing.js';
import { NEAR_STEPS, SLIVER_STEPS, uniteRings, type UnitedCorner } from './unite-rings.js';

/** A ring of many points after its edges have moved outward, in metres. */
export interface WidenedRing {
  /** The outer ring counter-clockwise, then enclosed gaps clockwise: interleaved `x0, y0, x1, y1 ...`. */
  readonly rings: readonly Float64Array[];
  /** Area [m2], without the enclosed gaps. */
  readonly area: number;
  /** True if edges have vanished or parts have run together. */
  readonly closesUp: boolean;
}

/**
 * Moves every edge of a ring of many points outward by one distance, corners mitred, in floats. Each
 * corner moves by `d (n1 + n2) / (1 + n1 . n2)`, n being the unit normals of its edges. If no edge
 * turns back and nothing crosses, the result is good to `1e-15` of the coordinates. Otherwise the
 * swept strips are united, and gaps narrower than `1.5e-8` of the figure may close too. It takes n log
 * n time if nothing closes up, else n times the number of edges abreast. Mitres are not cut off, so a
 * sharp corner reaches far out.
 *
 * @param xy - interleaved `x0, y0, x1, y1 ...` [metres], three points or more, either way round; not
 *   changed. A point that repeats the one before is skipped
 * @param by - outward distance [metres], not negative
 * @returns rings, their area [m2] and whether anything closed up
 * @throws `WRONG_TYPE`, `TOO_FEW`, `NOT_FINITE`, `NEGATIVE`, `OUT_OF_RANGE`,
 *   `SELF_INTERSECTION` (with the two edges), `ZERO_AREA`, `OUTLINE_UNRESOLVED`
 * @source derived
 * @example
 * widenRing(Float64Array.of(0, 0, 36, 0, 36, 14, 0, 14), 1).area //=> 608
 */
export function widenRing(xy: Float64Array, by: number): WidenedRing {
  if (typeof by !== 'number') throw fault('WRONG_TYPE', 'expected a distance in metres');
  if (!Number.isFinite(by)) throw fault('NOT_FINITE', `${by} is not a distance`);
  if (by < 0) throw fault('NEGATIVE', `the distance cannot be negative, got ${by}`, { got: by });
  if (!isInRange(by)) throw fault('OUT_OF_RANGE', `${by} m is too large or too small for a site`);
  const crossing = ringCrossing(xy);
  if (crossing !== null) {
    const { first, second } = crossing;
    const words = `edge ${first} and edge ${second} cross or touch. Edge 0 runs from the first point to the second`;
    throw fault('SELF_INTERSECTION', words, { first, second });
  }
  const [x0, y0] = [xy[0] ?? 0, xy[1] ?? 0];
  const ring = leftTurned(fromFirst(xy));
  if (ring.length < 6) throw fault('ZERO_AREA', 'the ring has no area');
  const moves = move(ring, by);
  const { moved, vanishes } = moves;
  requireNear(moved);
  const closesUp = vanishes || sweepForCrossing(floatSites([moved])) !== undefined;
  const local = closesUp ? united([swept(ring, by, moves), ring]) : [moved];
  const area = local.reduce((sum, one) => sum + doubleArea(one), 0) / 2;
  const rings = local.map((one) => shifted(one, x0, y0));
  return Object.freeze({ rings: Object.freeze(rings), area, closesUp });
}

function requireNear(list: Float64Array): void {
  for (const value of list) {
    if (Math.abs(value) <= FAR) continue;
    throw fault(
      'OUT_OF_RANGE',
      'a corner is so sharp that its mitre moves beyond any site. Cut the corner off',
    );
  }
}

function shifted(ring: Float64Array, x: number, y: number): Float64Array {
  const out = new Float64Array(ring.length);
  for (let k = 0; k < ring.length; k += 2) {
    out[k] = (ring[k] ?? 0) + x;
    out[k + 1] = (ring[k + 1] ?? 0) + y;
  }
  return out;
}

/** The points relative to the first one, without repeats. */
function fromFirst(xy: Float64Array): Float64Array {
  const local = new Float64Array(xy.length);
  const x0 = xy[0] ?? 0;
  const y0 = xy[1] ?? 0;
  let count = 2;
  let x = 0;
  let y = 0;
  for (let k = 2; k < xy.length; k += 2) {
    const nextX = (xy[k] ?? 0) - x0;
    const nextY = (xy[k + 1] ?? 0) - y0;
    if (nextX === x && nextY === y) continue;
    x = nextX;
    y = nextY;
    local[count] = x;
    local[count + 1] = y;
    count += 2;
  }
  while (count > 2 && local[count - 2] === 0 && local[count - 1] === 0) count -= 2;
  return local.subarray(0, count);
}

function doubleArea(ring: Float64Array): number {
  let twice = 0;
  let x = ring.at(-2) ?? 0;
  let y = ring.at(-1) ?? 0;
  for (let k = 0; k < ring.length; k += 2) {
    const nextX = ring[k] ?? 0;
    const nextY = ring[k + 1] ?? 0;
    twice += x * nextY - nextX * y;
    x = nextX;
    y = nextY;
  }
  return twice;
}

/** The ring counter-clockwise. */
function leftTurned(ring: Float64Array): Float64Array {
  if (doubleArea(ring) >= 0) return ring;
  const turned = new Float64Array(ring.length);
  for (let k = 0; k < ring.length; k += 2) {
    turned[k] = ring[ring.length - 2 - k] ?? 0;
    turned[k + 1] = ring[ring.length - 1 - k] ?? 0;
  }
  return turned;
}

/** Unit normal of each edge to the right, which is out of a counter-clockwise ring. */
function normalsOf(ring: Float64Array): Float64Array {
  const normals = new Float64Array(ring.length);
  for (let k = 0; k < ring.length; k += 2) {
    const to = k + 2 < ring.length ? k + 2 : 0;
    const dx = (ring[to] ?? 0) - (ring[k] ?? 0);
    const dy = (ring[to + 1] ?? 0) - (ring[k + 1] ?? 0);
    const size = Math.sqrt(dx * dx + dy * dy);
    normals[k] = dy / size;
    normals[k + 1] = -dx / size;
  }
  return normals;
}

/** A moved ring, and the edges that have turned back. */
interface Moves {
  readonly normals: Float64Array;
  readonly moved: Float64Array;
  /** 1 for each edge that has vanished between its moved corners. */
  readonly turnsBack: Uint8Array;
  readonly vanishes: boolean;
}

const at = (list: Float64Array, k: number): number => list[k] ?? 0;

function move(ring: Float64Array, by: number): Moves {
  const count = ring.length;
  const normals = normalsOf(ring);
  const moved = new Float64Array(count);
  for (let k = 0; k < count; k += 2) {
    const before = k === 0 ? count - 2 : k - 2;
    const nx = at(normals, before) + at(normals, k);
    const ny = at(normals, before + 1) + at(normals, k + 1);
    // |n1 + n2|^2 = 2 (1 + n1 . n2), without the loss of digits near a fold
    const part = (2 * by) / (nx * nx + ny * ny);
    moved[k] = at(ring, k) + part * nx;
    moved[k + 1] = at(ring, k + 1) + part * ny;
  }
  const turnsBack = new Uint8Array(count / 2);
  let vanishes = false;
  for (let k = 0; k < count; k += 2) {
    const to = k + 2 < count ? k + 2 : 0;
    const dx = at(moved, to) - at(moved, k);
    const dy = at(moved, to + 1) - at(moved, k + 1);
    if (dy * at(normals, k) - dx * at(normals, k + 1) > 0) continue;
    turnsBack[k / 2] = 1;
    vanishes = true;
  }
  return { normals, moved, turnsBack, vanishes };
}

/**
 * The line around the area that the edges sweep. At an inner corner with an edge that vanishes it goes
 * through the old corner, so that each strip is whole.
 */
function swept(ring: Float64Array, by: number, moves: Moves): Float64Array {
  const { normals, moved, turnsBack, vanishes } = moves;
  if (!vanishes) return moved;
  const count = ring.length;
  const line: number[] = [];
  for (let k = 0; k < count; k += 2) {
    const before = k === 0 ? count - 2 : k - 2;
    const x = at(ring, k);
    const y = at(ring, k + 1);
    const n1x = at(normals, before);
    const n1y = at(normals, before + 1);
    const n2x = at(normals, k);
    const n2y = at(normals, k + 1);
    const isBack = turnsBack[k / 2] === 1 || turnsBack[before / 2] === 1;
    if (isBack && n1x * n2y - n1y * n2x < 0) {
      line.push(x + by * n1x, y + by * n1y, x, y, x + by * n2x, y + by * n2y);
    } else line.push(at(moved, k), at(moved, k + 1));
  }
  const all = Float64Array.from(line);
  requireNear(all);
  return all;
}

function united(given: readonly Float64Array[]): Float64Array[] {
  const { rings = [], step = 0 } = uniteRings(given) ?? {};
  const near = NEAR_STEPS * step;
  const kept = rings
    .map((ring) => Float64Array.from(ring.flatMap((corner) => placeOf(corner, near))))
    .filter((ring) => Math.abs(doubleArea(ring)) > SLIVER_STEPS * step * step);
  const outer = kept.filter((ring) => doubleArea(ring) > 0);
  if (outer.length !== 1) {
    throw fault('OUTLINE_UNRESOLVED', 'the widened ring could not be worked out. Widen by less');
  }
  return [...outer, ...kept.filter((ring) => doubleArea(ring) < 0)];
}

type Place = readonly [x: number, y: number];

/** The point where the two edges of a crossing meet, to more digits than the grid has. */
function placeOf({ at, crossing }: UnitedCorner, near: number): Place {
  if (crossing === undefined) return at;
  const [a, b, c, d] = crossing.map((place) => placeOf(place, near));
  if (a === undefined || b === undefined || c === undefined || d === undefined) return at;
  const [ux, uy] = [b[0] - a[0], b[1] - a[1]];
  const [vx, vy] = [d[0] - c[0], d[1] - c[1]];
  const part = ((c[0] - a[0]) * vy - (c[1] - a[1]) * vx) / (ux * vy - uy * vx);
  const [x, y] = [a[0] + part * ux, a[1] + part * uy];
  return Math.abs(x - at[0]) < near && Math.abs(y - at[1]) < near ? [x, y] : at;
}
