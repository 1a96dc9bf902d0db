import { fault, type FieldPath } from '../../errors.js';
import { partsOf } from './parts.js';
import { spreadOrder } from './spread-order.js';
import { triangulate, type Parts, type Surface, type Triangulation } from './triangulation.js';
import { at, isFloats, isInRange } from '../floats.js';

/** Coordinates and heights up to 100 000 km. Internal. */
export const MOST = 1e8;

/** Points beyond this number would not fit the numbering of the triangles. */
const MOST_POINTS = 50_000_000;

/** A place that everything is measured from, so that large coordinates lose no digits. Internal. */
export interface Origin {
  readonly x: number;
  readonly y: number;
}

/** Where a surface is seen from. Internal. */
interface Seen extends Origin {
  /** True where its cells are so small that it does not matter along which diagonal they are joined. */
  readonly isFine?: boolean;
}

/** The first point of a list of x, y and z, where it can be one. Internal. */
export function originOf(values: unknown): Origin {
  const [x, y] = isFloats(values) ? [values[0] ?? NaN, values[1] ?? NaN] : [NaN, NaN];
  return Math.abs(x) <= MOST && Math.abs(y) <= MOST ? { x, y } : { x: 0, y: 0 };
}

/** Makes sure that a list of floats is one, with all entries finite and in range. Internal. */
export function checkFloats(
  values: unknown,
  path: FieldPath,
  { stride, words }: { readonly stride: number; readonly words: string },
): asserts values is Float64Array {
  if (!isFloats(values) || values.length % stride !== 0) {
    const code = values === undefined ? 'REQUIRED' : 'WRONG_TYPE';
    throw fault(code, `expected a Float64Array of ${words}`, {}, path);
  }
  for (let index = 0; index < values.length; index += 1) {
    const value = at(values, index);
    if (isInRange(value, MOST)) continue;
    const place = [...path, Math.floor(index / stride), index % stride];
    if (!Number.isFinite(value)) {
      throw fault('NOT_FINITE', 'every coordinate must be a finite number', {}, place);
    }
    const words = `${value} m is ${Math.abs(value) > MOST ? 'larger' : 'smaller'} than anything on a site`;
    throw fault('OUT_OF_RANGE', `${words}. Check the digits and the unit`, {}, place);
  }
}

/**
 * Reads spot heights and triangulates them. Points that repeat another are left out; two heights at
 * one place are refused. Internal.
 */
export function readSurface(values: unknown, field: string, origin: Seen): Surface {
  checkFloats(values, [field], { stride: 3, words: 'x, y and z of each point in turn' });
  const count = values.length / 3;
  if (count < 3) {
    throw fault('TOO_FEW', 'a surface needs three points or more', {}, [field]);
  }
  if (count > MOST_POINTS) {
    throw fault('TOO_MANY', `more than ${MOST_POINTS} points`, {}, [field]);
  }
  const xy = new Float64Array(2 * count);
  const order = spreadOrder(values, 3);
  for (let k = 0; k < count; k += 1) {
    const from = 3 * (order?.[k] ?? k);
    xy[2 * k] = at(values, from) - origin.x;
    xy[2 * k + 1] = at(values, from + 1) - origin.y;
  }
  const z = heightsIn(values, order);
  const { hull, ...mesh } = triangulate(xy);
  if (!isWide(xy, hull, origin)) {
    const words = 'all points lie at one place or on one line: a surface needs width';
    throw fault('POINTS_COLLINEAR', words, {}, [field]);
  }
  // as many triangles as points, whose outer ones are the hull, can have: none was left out
  const areAllUsed = mesh.triangles.length / 3 === 2 * count - 2 - hull.length;
  if (!areAllUsed) refuseTwoHeights({ ...mesh, z }, field, order);
  return { z, parts: partsAt(mesh, z, origin), ...mesh };
}

/**
 * A surface that has been read, at other heights: the same values but for z, all moved by one
 * distance. Internal.
 */
export function atHeights(surface: Surface, values: Float64Array, origin: Seen): Surface {
  const z = heightsIn(values, spreadOrder(values, 3));
  const { xy, triangles, halfedges } = surface;
  return { z, parts: partsAt(surface, z, origin), xy, triangles, halfedges };
}

/** The heights in the order of the points of a surface. */
function heightsIn(values: Float64Array, order: Uint32Array | undefined): Float64Array {
  const z = new Float64Array(values.length / 3);
  for (let k = 0; k < z.length; k += 1) z[k] = at(values, 3 * (order?.[k] ?? k) + 2);
  return z;
}

const partsAt = (mesh: Triangulation, z: Float64Array, origin: Seen): Parts | undefined =>
  origin.isFine === true ? undefined : partsOf(mesh, z, grainOf(mesh.xy, origin));

/** The last digit of the largest coordinate as it was given. */
function grainOf(xy: Float64Array, origin: Origin): number {
  let most = Math.max(Math.abs(origin.x), Math.abs(origin.y));
  for (let k = 0; k < xy.length; k += 1) if (Math.abs(at(xy, k)) > most) most = Math.abs(at(xy, k));
  return most * Number.EPSILON;
}

/** True where the hull is wider than the coordinates are rounded. */
function isWide(xy: Float64Array, hull: Uint32Array, origin: Origin): boolean {
  let double = 0;
  let reach = 0;
  const x0 = at(xy, 2 * (hull[0] ?? 0));
  const y0 = at(xy, 2 * (hull[0] ?? 0) + 1);
  let px = 0;
  let py = 0;
  for (const point of hull) {
    const x = at(xy, 2 * point) - x0;
    const y = at(xy, 2 * point + 1) - y0;
    double += px * y - py * x;
    reach = Math.max(reach, Math.abs(x), Math.abs(y));
    px = x;
    py = y;
  }
  const size = Math.max(Math.abs(origin.x), Math.abs(origin.y), Math.abs(x0), Math.abs(y0), reach);
  return Math.abs(double) / 2 > 8 * Number.EPSILON * size * reach;
}

/** Points that no triangle uses repeat another one: their heights must be the same. */
function refuseTwoHeights(
  { xy, z, triangles }: Triangulation & { readonly z: Float64Array },
  field: string,
  given: Uint32Array | undefined,
): void {
  const used = new Uint8Array(z.length);
  for (const point of triangles) used[point] = 1;
  const spare: number[] = [];
  for (let k = 0; k < z.length; k += 1) if (used[k] === 0) spare.push(k);
  if (spare.length === 0) return;
  const order = (a: number, b: number): number => {
    const byX = at(xy, 2 * a) - at(xy, 2 * b);
    return byX === 0 ? at(xy, 2 * a + 1) - at(xy, 2 * b + 1) : byX;
  };
  spare.sort(order);
  for (let k = 0; k < z.length; k += 1) {
    let low = 0;
    let high = spare.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (order(spare[middle] ?? 0, k) < 0) low = middle + 1;
      else high = middle;
    }
    const other = spare[low] ?? k;
    // of several points at one place, each is compared with the first of them
    if (order(other, k) === 0 && z[other] !== z[k]) {
      const places = [given?.[other] ?? other, given?.[k] ?? k];
      const [first, second] = [Math.min(...places), Math.max(...places)];
      const words = `points ${first} and ${second} are at one place and have two heights (the first point is point 0). Remove one of them`;
      throw fault('TWO_HEIGHTS', words, { first, second }, [field, second]);
    }
  }
}
