import { fault } from '../../errors.js';
import { FAR, isInRange } from '../floats.js';
import { floatSites } from './float-sites.js';
import { ringCrossing } from './ring-crossing.js';
import { sweepForCrossing } from './sweep-for-crossing.js';
import { NEAR_STEPS, SLIVER_STEPS, uniteRings, type UnitedCorner } from './unite-rings.js';

/** A ring of many points that has been moved out, in metres. */
export interface WidenedRing {
  /** The outer ring counter-clockwise, then what it closes in, clockwise: x and y in turn. */
  readonly rings: readonly Float64Array[];
  /** m2, less what is closed in. */
  readonly area: number;
  /** True where edges have vanished or parts have run together. */
  readonly closesUp: boolean;
}

/**
 * Moves every edge of a ring of many points outward by one distance, corners mitred, in floats: each
 * corner moves by `d (n1 + n2) / (1 + n1 . n2)`, n the unit normals of its edges. Where no edge turns
 * back and nothing crosses, that is all, good to `1e-15` of the coordinates; else the swept strips are
 * united, and what is narrower than `1.5e-8` of the figure may close too. Time n log n without closing
 * up; what closes up takes n times the edges abreast of each other. A mitre reaches as far as its edges
 * take to meet.
 *
 * @param xy - x and y of each point in turn [metres], three points or more, either way round; a point
 *   that repeats the one before is passed over; not changed
 * @param by - how far out [metres], not negative
 * @returns rings, their area [m2] and whether anything closed up
 * @throws `WRONG_TYPE`, `TOO_FEW`, `NOT_FINITE`, `NEGATIVE`, `OUT_OF_RANGE`,
 *   `SELF_INTERSECTION` (with the two edges), `ZERO_AREA`, `OUTLINE_UNRESOLVED`
 * @source derived
 * @example
 * widenRing(Float64Array.of(0, 0, 36, 0, 36, 14, 0, 14), 1).area //=> 608
 */
export function widenRing(xy: Float64Array, by: number): WidenedRing {
  if (typeof by !== 'number') throw fault('WRONG_TYPE', 'expected a distance in metres');
  if (!Number.isFinite(by)) throw fault('NOT_FINITE', `${by} is no distance`);
  if (by < 0) throw fault('NEGATIVE', `the distance must not be negative, got ${by}`, { got: by });
  if (!isInRange(by)) throw fault('OUT_OF_RANGE', `${by} m is no distance on a site`);
  const crossing = ringCrossing(xy);
  if (crossing !== undefined) {
    const { first, second } = crossing;
    const words = `edge ${first} and edge ${second} cross or touch`;
    throw fault('SELF_INTERSECTION', words, { first, second });
  }
  const [x0, y0] = [xy[0] ?? 0, xy[1] ?? 0];
  const ring = leftTurned(fromFirst(xy));
  if (ring.length < 6) throw fault('ZERO_AREA', 'the ring encloses nothing');
  const { moved, swept, vanishes } = sweep(ring, by);
  if (![moved, swept].every((list) => list.every((value) => Math.abs(value) <= FAR))) {
    throw fault('OUT_OF_RANGE', 'a corner this sharp moves beyond any site');
  }
  const closesUp = vanishes || sweepForCrossing(floatSites([moved])) !== undefined;
  const local = closesUp ? united([swept, ring]) : [moved];
  const area = local.reduce((sum, one) => sum + doubleArea(one), 0) / 2;
  const rings = local.map((one) => one.map((value, k) => value + (k % 2 === 0 ? x0 : y0)));
  return Object.freeze({ rings: Object.freeze(rings), area, closesUp });
}

/** The points relative to the first one, without those that repeat the one before. */
function fromFirst(xy: Float64Array): Float64Array {
  const local = new Float64Array(xy.length);
  const [x0, y0] = [xy[0] ?? 0, xy[1] ?? 0];
  let [count, x, y] = [2, 0, 0];
  for (let k = 2; k < xy.length; k += 2) {
    const [nextX, nextY] = [(xy[k] ?? 0) - x0, (xy[k + 1] ?? 0) - y0];
    if (nextX === x && nextY === y) continue;
    [x, y] = [nextX, nextY];
    local[count] = x;
    local[count + 1] = y;
    count += 2;
  }
  while (count > 2 && local[count - 2] === 0 && local[count - 1] === 0) count -= 2;
  return local.subarray(0, count);
}

function doubleArea(ring: Float64Array): number {
  let twice = 0;
  let [x, y] = [ring.at(-2) ?? 0, ring.at(-1) ?? 0];
  for (let k = 0; k < ring.length; k += 2) {
    const [nextX, nextY] = [ring[k] ?? 0, ring[k + 1] ?? 0];
    twice += x * nextY - nextX * y;
    [x, y] = [nextX, nextY];
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

/** Unit normals to the right, out of a counter-clockwise ring, one for each edge. */
function normalsOf(ring: Float64Array): Float64Array {
  const normals = new Float64Array(ring.length);
  for (let k = 0; k < ring.length; k += 2) {
    const to = k + 2 < ring.length ? k + 2 : 0;
    const [dx, dy] = [(ring[to] ?? 0) - (ring[k] ?? 0), (ring[to + 1] ?? 0) - (ring[k + 1] ?? 0)];
    const size = Math.sqrt(dx * dx + dy * dy);
    normals[k] = dy / size;
    normals[k + 1] = -dx / size;
  }
  return normals;
}

/**
 * The moved corners, and the line round all that the edges sweep: at an inner corner with an edge that
 * vanishes it goes through the old corner, so that each strip is whole.
 */
function sweep(ring: Float64Array, by: number) {
  const count = ring.length;
  const normals = normalsOf(ring);
  const at = (list: Float64Array, k: number): number => list[k] ?? 0;
  const moved = new Float64Array(count);
  for (let k = 0; k < count; k += 2) {
    const before = k === 0 ? count - 2 : k - 2;
    const [nx, ny] = [
      at(normals, before) + at(normals, k),
      at(normals, before + 1) + at(normals, k + 1),
    ];
    // |n1 + n2|^2 = 2 (1 + n1 . n2), without the loss of digits near a fold
    const part = (2 * by) / (nx * nx + ny * ny);
    moved[k] = at(ring, k) + part * nx;
    moved[k + 1] = at(ring, k + 1) + part * ny;
  }
  const turnsBack = (k: number): boolean => {
    const to = k + 2 < count ? k + 2 : 0;
    const [dx, dy] = [at(moved, to) - at(moved, k), at(moved, to + 1) - at(moved, k + 1)];
    return dy * at(normals, k) - dx * at(normals, k + 1) <= 0;
  };
  const swept: number[] = [];
  let vanishes = false;
  for (let k = 0; k < count; k += 2) {
    const before = k === 0 ? count - 2 : k - 2;
    const [x, y] = [at(ring, k), at(ring, k + 1)];
    const [n1x, n1y] = [at(normals, before), at(normals, before + 1)];
    const [n2x, n2y] = [at(normals, k), at(normals, k + 1)];
    const isBack = turnsBack(k);
    vanishes ||= isBack;
    if (n1x * n2y - n1y * n2x < 0 && (isBack || turnsBack(before))) {
      swept.push(x + by * n1x, y + by * n1y, x, y, x + by * n2x, y + by * n2y);
    } else swept.push(at(moved, k), at(moved, k + 1));
  }
  return { moved, swept: Float64Array.from(swept), vanishes };
}

function united(given: readonly Float64Array[]): Float64Array[] {
  const { rings = [], step = 0 } = uniteRings(given) ?? {};
  const near = NEAR_STEPS * step;
  const kept = rings
    .map((ring) => Float64Array.from(ring.flatMap((corner) => placeOf(corner, near))))
    .filter((ring) => Math.abs(doubleArea(ring)) > SLIVER_STEPS * step * step);
  const outer = kept.filter((ring) => doubleArea(ring) > 0);
  if (outer.length !== 1) {
    throw fault('OUTLINE_UNRESOLVED', 'the widened ring cannot be made out');
  }
  return [...outer, ...kept.filter((ring) => doubleArea(ring) < 0)];
}

type Place = readonly [x: number, y: number];

/** Where the two edges of a crossing meet, to more digits than the grid has. */
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
