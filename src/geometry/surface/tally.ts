import type { Piece } from './piece.js';
import { at } from '../floats.js';

/** What cut and fill add up to, in metres. Internal. */
export interface Totals {
  readonly cut: number;
  readonly fill: number;
  readonly cutArea: number;
  readonly fillArea: number;
  readonly area: number;
  readonly deepestCut: Depth | null;
  readonly deepestFill: Depth | null;
}

/** A depth and where it is. */
export interface Depth {
  /** Between the two surfaces, not negative [metres]. */
  readonly depth: number;
  /** Where it is: x [metres]. */
  readonly x: number;
  /** Where it is: y [metres]. */
  readonly y: number;
}

/** Adds up cut and fill over triangles. Internal. */
export interface Tally {
  /** A triangle with the depths of its corners: + where there is cut. */
  readonly triangle: (area: number, d0: number, d1: number, d2: number) => void;
  /** A depth at a place, for the extremes. */
  readonly depth: (d: number, x: number, y: number) => void;
  /** A convex piece with depths for heights. */
  piece(piece: Piece): void;
  /** Adds what another tally gave out, so many times. */
  share(sums: Float64Array, share: number): void;
  /** Gives out what has been added up, and starts again; extremes are kept. */
  take(sums: Float64Array): void;
  totals(): Totals;
}

/** Where a sum stands in a list of sums. Internal. */
export const CUT = 0;
/** Where a sum stands in a list of sums. Internal. */
export const FILL = 1;
const [CUT_AREA, FILL_AREA, AREA] = [2, 3, 4] as const;
/** How many sums there are. Internal. */
export const SUMS = 5;

/** Sums are taken in blocks of so many triangles, so that a million terms lose no digits. */
const BLOCK = 1024;

/**
 * Makes an empty tally. Each triangle is split exactly where its depth is zero; all terms of a sum
 * have one sign. Internal.
 *
 * @param extremes - those of another tally, to be kept together
 */
export function makeTally(extremes: Extremes = makeExtremes()): Tally & Extremes {
  const block = new Float64Array(SUMS);
  const sums = new Float64Array(SUMS);
  const { depth, extreme } = extremes;
  let left = BLOCK;

  const add = (slot: number, value: number): void => {
    block[slot] = at(block, slot) + value;
  };
  const flush = (): void => {
    for (let slot = 0; slot < SUMS; slot += 1) {
      sums[slot] = at(sums, slot) + at(block, slot);
      block[slot] = 0;
    }
    left = BLOCK;
  };
  /** A part whose depths have one sign. */
  const part = (area: number, depths: number): void => {
    if (depths > 0) {
      add(CUT, (area * depths) / 3);
      add(CUT_AREA, area);
    } else if (depths < 0) {
      add(FILL, (area * -depths) / 3);
      add(FILL_AREA, area);
    }
  };
  /** d0 stands alone on its side of zero; the triangle is cut in three along the zero line. */
  const split = (area: number, d0: number, d1: number, d2: number): void => {
    const t1 = d0 / (d0 - d1);
    const t2 = d0 / (d0 - d2);
    part(area * t1 * t2, d0);
    part(area * (1 - t1), d1 + d2);
    part(area * t1 * (1 - t2), d2);
  };
  const splitAtZero: Tally['triangle'] = (area, d0, d1, d2) => {
    const p0 = d0 > 0;
    const p1 = d1 > 0;
    const p2 = d2 > 0;
    if (p0 === p1) split(area, d2, d0, d1);
    else if (p0 === p2) split(area, d1, d2, d0);
    else split(area, d0, d1, d2);
  };
  const triangle: Tally['triangle'] = (area, d0, d1, d2) => {
    add(AREA, area);
    if ((d0 >= 0 && d1 >= 0 && d2 >= 0) || (d0 <= 0 && d1 <= 0 && d2 <= 0)) {
      part(area, d0 + d1 + d2);
    } else {
      splitAtZero(area, d0, d1, d2);
    }
    left -= 1;
    if (left === 0) flush();
  };
  return {
    triangle,
    depth,
    depths: extremes.depths,
    extreme,
    share(from, share) {
      for (let slot = 0; slot < SUMS; slot += 1) add(slot, share * at(from, slot));
      left -= 1;
      if (left === 0) flush();
    },
    take(to) {
      flush();
      to.set(sums);
      sums.fill(0);
    },
    piece(piece) {
      if (piece.count < 3) return;
      extremes.depths(piece);
      addPiece(piece, triangle);
    },
    totals() {
      flush();
      const [cut, fill] = [at(sums, CUT), at(sums, FILL)];
      const [cutArea, fillArea, area] = [at(sums, CUT_AREA), at(sums, FILL_AREA), at(sums, AREA)];
      const [deepestCut, deepestFill] = [extreme(0), extreme(3)];
      return { cut, fill, cutArea, fillArea, area, deepestCut, deepestFill };
    },
  };
}

/** Adds a convex piece as the triangles round its first corner. */
function addPiece({ values, count }: Piece, triangle: Tally['triangle']): void {
  const x = at(values, 0);
  const y = at(values, 1);
  const d = at(values, 2);
  for (let p = 3; p < 3 * count - 3; p += 3) {
    const bx = at(values, p) - x;
    const by = at(values, p + 1) - y;
    const cx = at(values, p + 3) - x;
    const cy = at(values, p + 4) - y;
    const area = Math.abs(bx * cy - by * cx) / 2;
    triangle(area, d, at(values, p + 2), at(values, p + 5));
  }
}

/** Keeps the deepest cut (slot 0) and the deepest fill (slot 3), each with its place. Internal. */
export interface Extremes {
  readonly depth: Tally['depth'];
  /** The depths of all corners of a piece, without one call each: a call puts numbers in memory. */
  readonly depths: (piece: Piece) => void;
  readonly extreme: (slot: 0 | 3) => Depth | null;
}

/** Of places with one depth the first along x counts, then along y. */
function makeExtremes(): Extremes {
  const kept = new Float64Array(6);
  const depth: Tally['depth'] = (d, x, y) => {
    const slot = d > 0 ? 0 : 3;
    const size = Math.abs(d);
    if (size < at(kept, slot) || size === 0) return;
    if (size === at(kept, slot)) {
      const ahead = at(kept, slot + 1) - x;
      if (ahead < 0 || (ahead === 0 && at(kept, slot + 2) <= y)) return;
    }
    kept[slot] = size;
    kept[slot + 1] = x;
    kept[slot + 2] = y;
  };
  return {
    depth,
    depths({ values, count }) {
      for (let p = 0; p < 3 * count; p += 3) {
        const d = at(values, p + 2);
        if (d < at(kept, 0) && -d < at(kept, 3)) continue;
        depth(d, at(values, p), at(values, p + 1));
      }
    },
    extreme: (slot) =>
      at(kept, slot) > 0
        ? { depth: at(kept, slot), x: at(kept, slot + 1), y: at(kept, slot + 2) }
        : null,
  };
}
