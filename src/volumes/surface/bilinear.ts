import type { Piece } from './piece.js';
import { at } from './typed.js';

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
  const parts = { cut: 0, fill: 0, cutArea: 0, fillArea: 0, area: 1 };
  for (let k = 0; k + 1 < cuts.length; k += 1) {
    const [from, to] = [cuts[k] ?? 0, cuts[k + 1] ?? 1];
    if (from === to) continue;
    const add = (
      field: Exclude<keyof Parts, 'area'>,
      of: (p: number, q: number) => number,
    ): void => {
      parts[field] += summed((u) => of(near(u), far(u)), from, to);
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

/** Integral of a smooth function, halved until the parts agree with the whole. */
function summed(f: (u: number) => number, from: number, to: number, depth = 24): number {
  const middle = (from + to) / 2;
  const whole = gauss(f, from, to);
  const [left, right] = [gauss(f, from, middle), gauss(f, middle, to)];
  const sum = left + right;
  if (depth === 0 || Math.abs(sum - whole) <= 1e-14 * Math.abs(sum)) return sum;
  return summed(f, from, middle, depth - 1) + summed(f, middle, to, depth - 1);
}

/** Triangles that the zero line still crosses after so many halvings count as flat. */
const HALVINGS = 7;

/** A cell of a grid: its depths, and where its first corner is, in cells. Internal. */
export interface Bilinear {
  readonly depths: CellDepths;
  readonly u: number;
  readonly v: number;
}

/**
 * Adds a convex piece of a cell, all in cells. Exact where the depth has one sign, because it is a
 * quadratic on each triangle; else triangles are halved until the zero line is short. Internal.
 */
export function addPiece(parts: Parts, { values, count }: Piece, cell: Bilinear): void {
  const depthAt = (u: number, v: number): number => {
    const [d00, d10, d11, d01] = cell.depths;
    return (d00 * (1 - u) + d10 * u) * (1 - v) + (d01 * (1 - u) + d11 * u) * v;
  };
  const corner = (k: number): Place => {
    const [u, v] = [at(values, 3 * k) - cell.u, at(values, 3 * k + 1) - cell.v];
    return { u, v, d: depthAt(u, v) };
  };
  const between = (a: Place, b: Place): Place => {
    const [u, v] = [(a.u + b.u) / 2, (a.v + b.v) / 2];
    return { u, v, d: depthAt(u, v) };
  };
  const addTriangle = (a: Place, b: Place, c: Place, halvings: number): void => {
    const area = areaOf(a, b, c);
    const [ab, bc, ca] = [between(a, b), between(b, c), between(c, a)];
    const mean = (ab.d + bc.d + ca.d) / 3;
    // what bounds a quadratic on a triangle: its corners, and twice the middles less the corners
    const bounds = [a.d, b.d, c.d, bound(a, ab, b), bound(b, bc, c), bound(c, ca, a)];
    const isCut = bounds.every((d) => d >= 0);
    if (isCut || bounds.every((d) => d <= 0) || halvings === 0) {
      if (mean > 0) parts.cut += area * mean;
      else parts.fill -= area * mean;
      if (mean > 0) parts.cutArea += area;
      else if (mean < 0) parts.fillArea += area;
      return;
    }
    addTriangle(a, ab, ca, halvings - 1);
    addTriangle(ab, b, bc, halvings - 1);
    addTriangle(ca, bc, c, halvings - 1);
    addTriangle(ab, bc, ca, halvings - 1);
  };
  for (let k = 1; k + 1 < count; k += 1) {
    const [a, b, c] = [corner(0), corner(k), corner(k + 1)];
    parts.area += areaOf(a, b, c);
    addTriangle(a, b, c, HALVINGS);
  }
}

interface Place {
  readonly u: number;
  readonly v: number;
  readonly d: number;
}

const areaOf = (a: Place, b: Place, c: Place): number =>
  Math.abs((b.u - a.u) * (c.v - a.v) - (b.v - a.v) * (c.u - a.u)) / 2;

const bound = (a: Place, middle: Place, b: Place): number => 2 * middle.d - (a.d + b.d) / 2;
