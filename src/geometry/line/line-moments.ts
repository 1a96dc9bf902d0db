import { fault } from '../../errors.js';
import { MOST_SPREAD, unusable } from '../bulk-points.js';
import { at, hypotenuse } from '../floats.js';

/** Sums of points about their mean, in metres; the mean is relative to the first point. Internal. */
export interface LineMoments {
  readonly count: number;
  /** The first point. */
  readonly x0: number;
  readonly y0: number;
  /** Mean less the first point. */
  readonly meanX: number;
  readonly meanY: number;
  /** `sum dx^2`, `sum dx dy` and `sum dy^2` about the mean. */
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

/** A second pass is made if the first point is this far out, squared, over the spread. */
const FAR_OUT = 8;

/**
 * Moments of points in one pass about the first point, then moved to the mean. That loses three bits
 * or fewer. If the first point is so far from the others that more are lost, a second pass is made
 * about the mean. Internal.
 *
 * @param omitted - the number of a point that does not count, -1 for none
 */
export function momentsOf(xy: Float64Array, omitted = -1): LineMoments {
  const once = momentsAbout(xy, omitted, 0, 0);
  const spread = once.a + once.c;
  if (!(spread <= MOST_SPREAD)) throw unusable(xy, 2);
  const { count, meanX, meanY } = once;
  const outlying = count * (meanX * meanX + meanY * meanY);
  return outlying <= FAR_OUT * spread ? once : momentsAbout(xy, omitted, meanX, meanY);
}

/** The shift and the five sums: an array of more than eight floats is allocated elsewhere, and slowly. */
const ROOM = 7;

/** Moments from sums about a point; it is relative to the first one. */
function momentsAbout(
  xy: Float64Array,
  omitted: number,
  shiftX: number,
  shiftY: number,
): LineMoments {
  const first = omitted === 0 ? 2 : 0;
  const count = xy.length / 2 - (omitted < 0 ? 0 : 1);
  const sums = new Float64Array(ROOM);
  sums[0] = shiftX;
  sums[1] = shiftY;
  if (omitted <= 0) addUp(xy, { first, from: first, to: xy.length }, sums);
  else {
    addUp(xy, { first, from: first, to: 2 * omitted }, sums);
    addUp(xy, { first, from: 2 * omitted + 2, to: xy.length }, sums);
  }
  const x = at(sums, 2);
  const y = at(sums, 3);
  return {
    count,
    x0: at(xy, first),
    y0: at(xy, first + 1),
    meanX: shiftX + x / count,
    meanY: shiftY + y / count,
    a: Math.max(at(sums, 4) - (x * x) / count, 0),
    b: at(sums, 5) - (x * y) / count,
    c: Math.max(at(sums, 6) - (y * y) / count, 0),
  };
}

/** Indices in a flat list: the first point, and the start and end of the points to add. */
interface Part {
  readonly first: number;
  readonly from: number;
  readonly to: number;
}

/**
 * The loop over points, added to `sums`: the shift from the first point, and five sums. Floats go in
 * and out in one typed array, so that the compiler treats them as floats from the first call on. In
 * objects, or started at a plain 0, they sometimes cost five times as much.
 */
function addUp(xy: Float64Array, { first, from, to }: Part, sums: Float64Array): void {
  const x0 = at(xy, first);
  const y0 = at(xy, first + 1);
  const shiftX = at(sums, 0);
  const shiftY = at(sums, 1);
  let x = at(sums, 2);
  let y = at(sums, 3);
  let a = at(sums, 4);
  let b = at(sums, 5);
  let c = at(sums, 6);
  for (let i = from; i < to; i += 2) {
    const dx = at(xy, i) - x0 - shiftX;
    const dy = at(xy, i + 1) - y0 - shiftY;
    x += dx;
    y += dy;
    a += dx * dx;
    b += dx * dy;
    c += dy * dy;
  }
  sums[2] = x;
  sums[3] = y;
  sums[4] = a;
  sums[5] = b;
  sums[6] = c;
}

/** Sums of squares [m2] below this lose the digits of floats: the points coincide. */
const LEAST_SPREAD = 1e-150;

/**
 * Unit vector along the least-squares line through points, toward the last of them. Internal.
 *
 * @param omitted - the number of a point that does not count, -1 for none
 */
export function directionOf(
  xy: Float64Array,
  { x0, y0, a, b, c }: LineMoments,
  omitted = -1,
): readonly [number, number] {
  const [ux, uy] = mainDirection(a, b, c);
  const end = xy.length - 2;
  const last = 2 * omitted === end ? end - 2 : end;
  const isAhead = (at(xy, last) - x0) * ux + (at(xy, last + 1) - y0) * uy >= 0;
  // adding nothing turns a negative zero into zero
  return isAhead ? [ux + 0, uy + 0] : [0 - ux, 0 - uy];
}

/**
 * Unit eigenvector of `[[a, b], [b, c]]` with the larger eigenvalue, without trigonometry and without
 * cancellation.
 */
function mainDirection(a: number, b: number, c: number): readonly [number, number] {
  if (!(a + c > LEAST_SPREAD)) throw fault('POINTS_COINCIDE', 'all points are the same point');
  const spread = hypotenuse(a - c, 2 * b);
  if (!(spread > 1e-14 * (a + c))) {
    throw fault(
      'DIRECTION_UNDEFINED',
      'the points spread equally in every direction, so no line fits them',
    );
  }
  const [x, y] = a >= c ? [spread + (a - c), 2 * b] : [2 * b, spread + (c - a)];
  const norm = hypotenuse(x, y);
  return [x / norm, y / norm];
}
