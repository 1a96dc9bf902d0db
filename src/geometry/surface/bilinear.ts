import type { Piece } from './piece.js';
import { at } from '../floats.js';

/** Cut and fill of a bilinear depth over some area. Internal. */
export interface Parts {
  cut: number;
  fill: number;
  cutArea: number;
  fillArea: number;
  area: number;
}

/**
 * Depths at the corners of a unit cell: at (0, 0), (1, 0), (1, 1) and (0, 1); straight along and
 * across between them. Internal.
 */
export type CellDepths = readonly [number, number, number, number];

/**
 * Cut and fill of a whole unit cell. Across the cell the depth runs straight from p to q, and the cut
 * there is `p^2 / (2 (p - q))` where the two differ in sign; that is summed along the cell between
 * the places where p or q is zero. Internal.
 */
export function cellParts([d00, d10, d11, d01]: CellDepths): Parts {
  const near = (u: number): number => d00 + u * (d10 - d00);
  const far = (u: number): number => d01 + u * (d11 - d01);
  const cuts = [0, zeroOf(d00, d10), zeroOf(d01, d11), 1].sort((a, b) => a - b);
  const most = Math.max(...[d00, d10, d11, d01].map(Math.abs));
  const parts = { cut: 0, fill: 0, cutArea: 0, fillArea: 0, area: 1 };
  for (let k = 0; k + 1 < cuts.length; k += 1) {
    const [from, to] = [cuts[k] ?? 0, cuts[k + 1] ?? 1];
    if (from === to) continue;
    const add = (
      field: Exclude<keyof Parts, 'area'>,
      of: (p: number, q: number) => number,
    ): void => {
      const size = field === 'cut' || field === 'fill' ? most : 1;
      parts[field] += summed((u) => of(near(u), far(u)), [from, to], size);
    };
    add('cut', (p, q) => above(p, q));
    add('fill', (p, q) => above(-p, -q));
    add('cutArea', (p, q) => shareAbove(p, q));
    add('fillArea', (p, q) => shareAbove(-p, -q));
  }
  return parts;
}

/** Where a straight run from a to b is zero, 0 where it is not. */
const zeroOf = (a: number, b: number): number => (a < 0 !== b < 0 && a !== b ? a / (a - b) : 0);

/** Integral of the part above zero of a straight run from p to q. */
function above(p: number, q: number): number {
  if (p >= 0 && q >= 0) return (p + q) / 2;
  if (p <= 0 && q <= 0) return 0;
  const high = Math.max(p, q);
  return (high * high) / (2 * Math.abs(p - q));
}

function shareAbove(p: number, q: number): number {
  if (p <= 0 && q <= 0) return 0;
  return p >= 0 && q >= 0 ? 1 : Math.max(p, q) / Math.abs(p - q);
}

/** Places and weights of the five-point rule of Gauss on -1 to 1. */
const PLACES = [
  0,
  Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3,
  Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3,
];
const WEIGHTS = [128 / 225, (322 + 13 * Math.sqrt(70)) / 900, (322 - 13 * Math.sqrt(70)) / 900];

function gauss(f: (u: number) => number, from: number, to: number): number {
  const [middle, half] = [(from + to) / 2, (to - from) / 2];
  let sum = (WEIGHTS[0] ?? 0) * f(middle);
  for (const k of [1, 2]) {
    const step = half * (PLACES[k] ?? 0);
    sum += (WEIGHTS[k] ?? 0) * (f(middle - step) + f(middle + step));
  }
  return sum * half;
}

/**
 * Integral of a smooth function that does not change sign, halved until the parts agree with the whole
 * or to the rounding of what goes into it, which is in the order of `size`.
 */
function summed(f: (u: number) => number, [from, to]: Span, size: number): number {
  const whole = gauss(f, from, to);
  const least = 1e-14 * Math.abs(whole) + 1e-15 * size * (to - from);
  let spare = MOST_PARTS;
  const halved = (start: number, end: number, before: number, depth: number): number => {
    const middle = (start + end) / 2;
    const [left, right] = [gauss(f, start, middle), gauss(f, middle, end)];
    const sum = left + right;
    spare -= 1;
    if (depth === 0 || spare < 0 || Math.abs(sum - before) <= least) return sum;
    return halved(start, middle, left, depth - 1) + halved(middle, end, right, depth - 1);
  };
  return halved(from, to, whole, MOST_HALVINGS);
}

type Span = readonly [from: number, to: number];

/** Close to a saddle at zero the halves are many on one side, and one on the other. */
const MOST_HALVINGS = 24;

/**
 * More parts than any saddle takes. Where a cell is nearly plane and its zero line lies across it, the
 * span between the two zeros is so short that rounding alone is left in it: no halving would end.
 */
const MOST_PARTS = 500;

/** A cell of a grid: its depths, and where its first corner is, in cells. Internal. */
export interface Bilinear {
  readonly depths: CellDepths;
  readonly u: number;
  readonly v: number;
}

/**
 * Adds a convex piece of a cell, all in cells. Across the piece the depth runs straight, as in a whole
 * cell; the sums along it are taken between its corners and the places where its edges are at zero.
 * Internal.
 */
export function addPiece(parts: Parts, { values, count }: Piece, cell: Bilinear): void {
  const corners = Array.from({ length: count }, (_, k) => ({
    u: at(values, 3 * k) - cell.u,
    v: at(values, 3 * k + 1) - cell.v,
  }));
  const places = corners.map(({ u }) => u).sort((a, b) => a - b);
  for (let k = 0; k + 1 < count; k += 1) {
    const [from, to] = [places[k] ?? 0, places[k + 1] ?? 0];
    const sides = from < to ? sidesBetween(corners, from, to) : [];
    const [one, other] = sides;
    if (one !== undefined && other !== undefined) addStrip(parts, cell, [one, other], [from, to]);
  }
}

interface Place {
  readonly u: number;
  readonly v: number;
}

/** An edge as `v = v0 + rise (u - u0)`. */
interface Side {
  readonly u0: number;
  readonly v0: number;
  readonly rise: number;
}

/** The two edges of a convex piece that reach over a span of u. */
function sidesBetween(corners: readonly Place[], from: number, to: number): Side[] {
  return corners.flatMap((a, k) => {
    const b = corners[(k + 1) % corners.length] ?? a;
    const reaches = Math.min(a.u, b.u) <= from && Math.max(a.u, b.u) >= to;
    return reaches ? [{ u0: a.u, v0: a.v, rise: (b.v - a.v) / (b.u - a.u) }] : [];
  });
}

const vOn = ({ u0, v0, rise }: Side, u: number): number => v0 + rise * (u - u0);

/** Adds what lies between two edges over a span of u in which neither has a corner. */
function addStrip(
  parts: Parts,
  { depths: [d00, d10, d11, d01] }: Bilinear,
  [one, other]: readonly [Side, Side],
  [from, to]: readonly [number, number],
): void {
  const depthOn = (side: Side, u: number): number => {
    const v = vOn(side, u);
    return (d00 * (1 - u) + d10 * u) * (1 - v) + (d01 * (1 - u) + d11 * u) * v;
  };
  const width = (u: number): number => Math.abs(vOn(other, u) - vOn(one, u));
  const zeros = [one, other].flatMap((side) => {
    // along an edge the depth is a quadratic: its value, rise and bend where the edge begins
    const bend = (d00 - d10 - d01 + d11) * side.rise;
    const along = d10 - d00 + (d01 - d00) * side.rise;
    const first = along + (d00 - d10 - d01 + d11) * (side.v0 + side.rise * side.u0);
    return rootsOf(bend, first, depthOn(side, side.u0)).map((t) => side.u0 + t);
  });
  const cuts = [from, ...zeros.filter((u) => u > from && u < to), to].sort((a, b) => a - b);
  const most = Math.max(...[d00, d10, d11, d01].map(Math.abs));
  parts.area += ((width(from) + width(to)) / 2) * (to - from);
  for (let k = 0; k + 1 < cuts.length; k += 1) {
    const [start, end] = [cuts[k] ?? from, cuts[k + 1] ?? to];
    const sum = (of: (p: number, q: number) => number, size: number): number =>
      summed((u) => width(u) * of(depthOn(one, u), depthOn(other, u)), [start, end], size);
    parts.cut += sum((p, q) => above(p, q), most);
    parts.fill += sum((p, q) => above(-p, -q), most);
    parts.cutArea += sum((p, q) => shareAbove(p, q), 1);
    parts.fillArea += sum((p, q) => shareAbove(-p, -q), 1);
  }
}

/** Where `a t^2 + b t + c` is zero. */
function rootsOf(a: number, b: number, c: number): number[] {
  const square = b * b - 4 * a * c;
  if (!(square >= 0)) return [];
  const half = -(b + (b < 0 ? -1 : 1) * Math.sqrt(square)) / 2;
  return [half / a, c / half].filter(Number.isFinite);
}
