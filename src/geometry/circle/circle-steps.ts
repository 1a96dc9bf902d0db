import { at } from '../floats.js';

/** A circle, with its centre relative to the first point. Internal. */
export interface Circle {
  readonly x: number;
  readonly y: number;
  readonly r: number;
}

/** Every k-th point of a list: fits start on a few of them. Internal. */
export interface Sample {
  readonly xy: Float64Array;
  readonly every: number;
}

/**
 * Sums over a sample about a circle. `e` is the direction from the centre to the middle of the points.
 * u and v are the parts of the unit vector from the centre to a point, along `e` and square to it;
 * `w = 1 - u`, and d is the distance from the circle.
 */
interface Sums {
  readonly count: number;
  readonly ex: number;
  readonly ey: number;
  readonly w: number;
  readonly v: number;
  readonly ww: number;
  readonly wv: number;
  readonly vv: number;
  readonly d: number;
  readonly wd: number;
  readonly vd: number;
  readonly dd: number;
}

/** The result of a fit. Internal. */
export interface Fitted {
  readonly circle: Circle;
  /** Size of each step over the step before. */
  readonly rate: number;
  /** Variance of the radius for a variance of 1 of each distance. */
  readonly radiusVariance: number;
  readonly frame: Frame;
}

const MOST_STEPS = 100;
/** A change of the distances by less than this share of the extent is ignored. */
const SETTLED = 1e-13;
/** Avoids a division by zero for a point at the exact centre; no other point changes. */
const NEXT_TO_NOTHING = 1e-300;
/** With a radius of this many extents, the points are on a line. */
const FLATTEST = 1e6;

/** Middle of some points, relative to the first one, and their spread. Internal. */
export interface Frame {
  readonly mean: { readonly x: number; readonly y: number };
  readonly extent: number;
}

/** Middle of a sample, relative to the first point, and its spread. Internal. */
export function frameOf({ xy, every }: Sample): Frame {
  const x0 = at(xy, 0);
  const y0 = at(xy, 1);
  let x = 0;
  let y = 0;
  let most = 0;
  let count = 0;
  for (let i = 0; i < xy.length; i += 2 * every) {
    const dx = at(xy, i) - x0;
    const dy = at(xy, i + 1) - y0;
    x += dx;
    y += dy;
    most = Math.max(most, Math.abs(dx), Math.abs(dy));
    count += 1;
  }
  return { mean: { x: x / count, y: y / count }, extent: most };
}

/**
 * A first circle: `x^2 + y^2 = 2 cx x + 2 cy y + k` by linear least squares. Undefined if the points
 * are in line. Internal.
 */
export function firstCircle({ xy, every }: Sample, { mean }: Frame): Circle | undefined {
  const ox = at(xy, 0);
  const oy = at(xy, 1);
  let xx = 0;
  let xy2 = 0;
  let yy = 0;
  let xz = 0;
  let yz = 0;
  let z = 0;
  let count = 0;
  for (let i = 0; i < xy.length; i += 2 * every) {
    const x = at(xy, i) - ox - mean.x;
    const y = at(xy, i + 1) - oy - mean.y;
    const square = x * x + y * y;
    xx += x * x;
    xy2 += x * y;
    yy += y * y;
    xz += x * square;
    yz += y * square;
    z += square;
    count += 1;
  }
  const det = xx * yy - xy2 * xy2;
  if (!(det > 1e-13 * (xx + yy) * (xx + yy))) return undefined;
  const x = (xz * yy - yz * xy2) / (2 * det);
  const y = (yz * xx - xz * xy2) / (2 * det);
  return { x: mean.x + x, y: mean.y + y, r: Math.sqrt(z / count + x * x + y * y) };
}

/**
 * Minimizes the squares of the distances from a circle by Gauss-Newton steps, damped if a step makes
 * things worse. The unknowns are the point of the arc in the middle of the data, and the curvature and
 * the turn there, so that flat arcs settle as fast as full circles. Undefined if the circle opens out
 * to a line. Internal.
 */
export function settle(
  sample: Sample,
  frame: Frame,
  start: { readonly circle: Circle; readonly rate: number },
): Fitted | undefined {
  let { circle, rate } = start;
  let sums = sumsAbout(sample, frame, circle);
  let damping = 0;
  let before = 0;
  for (let k = 0; k < MOST_STEPS; k += 1) {
    const move = solve(sums, damping);
    const next = moved(circle, sums, move);
    if (!(next.r < FLATTEST * frame.extent)) return undefined;
    if (before > 0 && damping === 0) rate = Math.min(move.change / before, 1);
    if (move.change * rate <= SETTLED * frame.extent) {
      // the variance must not include the damping of the step
      const { radiusVariance } = damping === 0 ? move : solve(sums, 0);
      return { circle: next, rate, radiusVariance, frame };
    }
    const after = sumsAbout(sample, frame, next);
    if (after.dd <= sums.dd * (1 + 1e-9)) {
      before = move.change;
      circle = next;
      sums = after;
      damping = damping > 1e-6 ? damping / 10 : 0;
    } else {
      damping = Math.max(damping * 10, 1e-4);
    }
  }
  return { circle, rate, radiusVariance: solve(sums, 0).radiusVariance, frame };
}

function sumsAbout({ xy, every }: Sample, { mean }: Frame, circle: Circle): Sums {
  const ox = at(xy, 0);
  const oy = at(xy, 1);
  const { x: cx, y: cy, r } = circle;
  const away = Math.hypot(mean.x - cx, mean.y - cy);
  const [ex, ey] = away > 1e-3 * r ? [(mean.x - cx) / away, (mean.y - cy) / away] : [1, 0];
  const stride = 2 * every;
  let w1 = 0;
  let v1 = 0;
  let ww = 0;
  let wv = 0;
  let vv = 0;
  let d1 = 0;
  let wd = 0;
  let vd = 0;
  let dd = 0;
  // no counter in this loop: it costs more than all the sums
  for (let i = 0; i < xy.length; i += stride) {
    const x = at(xy, i) - ox - cx;
    const y = at(xy, i + 1) - oy - cy;
    const distance = Math.sqrt(x * x + y * y);
    const q = 1 / (distance + NEXT_TO_NOTHING);
    const w = 1 - (x * ex + y * ey) * q;
    const v = (y * ex - x * ey) * q;
    const d = distance - r;
    w1 += w;
    v1 += v;
    ww += w * w;
    wv += w * v;
    vv += v * v;
    d1 += d;
    wd += w * d;
    vd += v * d;
    dd += d * d;
  }
  const count = Math.ceil(xy.length / stride);
  return { count, ex, ey, w: w1, v: v1, ww, wv, vv, d: d1, wd, vd, dd };
}

interface Move {
  /** Outward move of the point of the arc in the middle of the data. */
  readonly apex: number;
  /** Change of curvature times the square of the radius. */
  readonly bend: number;
  /** Sideways move of the centre about that point. */
  readonly turn: number;
  /** Root mean square of the change of the distances. */
  readonly change: number;
  readonly radiusVariance: number;
}

/** Solves the normal equations for columns `w - 1`, `w` and `-v` by `L D L'` factors. */
function solve(sums: Sums, damping: number): Move {
  const { count, w, v, ww, wv, vv, d, wd, vd } = sums;
  const more = 1 + damping;
  const aa = (ww - 2 * w + count) * more;
  const [ab, ac] = [ww - w, v - wv];
  const [bb, cc] = [ww * more, vv * more];
  const bc = -wv;
  const [ra, rb, rc] = [d - wd, -wd, vd];
  const d1 = aa;
  const [l21, l31] = [ab / d1, ac / d1];
  const d3 = Math.max(cc - l31 * ac, Number.MIN_VALUE);
  // the bend last: it is the weakest of the three on a flat arc
  const l32 = (bc - l31 * ab) / d3;
  const d2 = Math.max(bb - l21 * ab - l32 * l32 * d3, Number.MIN_VALUE);
  const y3 = rc - l31 * ra;
  const bend = (rb - l21 * ra - l32 * y3) / d2;
  const turn = y3 / d3 - l32 * bend;
  const apex = ra / d1 - l21 * bend - l31 * turn;
  const change = Math.sqrt(Math.abs(apex * ra + bend * rb + turn * rc) / count);
  return { apex, bend, turn, change, radiusVariance: 1 / d2 };
}

/** The circle after a move. If the curvature changes sign, the centre changes sides. */
function moved(circle: Circle, { ex, ey }: Sums, { apex, bend, turn }: Move): Circle {
  const { x, y, r } = circle;
  const [ax, ay] = [x + (r + apex) * ex, y + (r + apex) * ey];
  const [tx, ty] = [ex + (turn / r) * ey, ey - (turn / r) * ex];
  const size = Math.hypot(tx, ty);
  const signed = r / (1 + bend / r);
  return { x: ax - (signed * tx) / size, y: ay - (signed * ty) / size, r: Math.abs(signed) };
}
