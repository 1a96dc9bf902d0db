import type { Box } from '../bounds.js';

/**
 * Zones around marked lines within a dig, in floats and metres: this file imports no decimal code.
 * Coordinates are relative to a point of the dig. With all of them within 10 km of it, lengths are
 * good to 1e-11 m and areas to about 1e-11 m times their perimeters. Internal.
 */

/** A closed line: interleaved `x0, y0, x1, y1 ...` [m]. */
export type FloatRing = readonly number[];

/** The side of a line where `nx (x - ax) + ny (y - ay) + reach` is not negative. */
interface Side {
  readonly nx: number;
  readonly ny: number;
  readonly ax: number;
  readonly ay: number;
  readonly reach: number;
}

/** A rectangle around one stretch of a line. */
export interface Strip {
  readonly sides: readonly Side[];
  readonly box: Box;
}

/**
 * The strips around the stretches of a line, twice the reach wide and extended by the reach past both
 * ends of each. Internal.
 */
export function stripsAlong(path: FloatRing, reach: number): Strip[] {
  const strips: Strip[] = [];
  for (let k = 0; k + 3 < path.length; k += 2) {
    const [ax = 0, ay = 0, bx = 0, by = 0] = path.slice(k, k + 4);
    strips.push(stripRound(ax, ay, { bx, by, reach }));
  }
  return strips;
}

function stripRound(
  ax: number,
  ay: number,
  { bx, by, reach }: { readonly bx: number; readonly by: number; readonly reach: number },
): Strip {
  const size = Math.hypot(bx - ax, by - ay);
  const [ux, uy] = [(bx - ax) / size, (by - ay) / size];
  const wide = reach * (Math.abs(ux) + Math.abs(uy));
  return {
    sides: [
      { nx: -uy, ny: ux, ax, ay, reach },
      { nx: uy, ny: -ux, ax, ay, reach },
      { nx: ux, ny: uy, ax, ay, reach },
      { nx: -ux, ny: -uy, ax: bx, ay: by, reach },
    ],
    box: {
      west: Math.min(ax, bx) - wide,
      south: Math.min(ay, by) - wide,
      east: Math.max(ax, bx) + wide,
      north: Math.max(ay, by) + wide,
    },
  };
}

/**
 * Area [m2] of a dig within any of the strips and outside all strips that are counted already. The
 * outer ring of the dig comes first, then its holes. Internal.
 */
export function zoneArea(
  rings: readonly FloatRing[],
  strips: readonly Strip[],
  counted: readonly Strip[],
): number {
  const [outer = 0, ...holes] = rings.map((ring) => areaWithin(ring, strips, counted));
  return holes.reduce((rest, hole) => rest - hole, outer);
}

function areaWithin(ring: FloatRing, strips: readonly Strip[], counted: readonly Strip[]): number {
  const box = boxOf(ring);
  const near = (strip: Strip) => overlap(strip.box, box);
  const earlier = counted.filter(near);
  let twice = 0;
  for (const strip of strips.filter(near)) {
    let pieces = [clipAll(ring, strip)];
    for (const other of earlier) {
      if (overlap(other.box, strip.box)) {
        pieces = pieces.flatMap((piece) => outsideStrip(piece, other));
      }
    }
    for (const piece of pieces) twice += doubleArea(piece);
    earlier.push(strip);
  }
  return Math.abs(twice) / 2;
}

function boxOf(ring: FloatRing): Box {
  let west = Infinity;
  let south = Infinity;
  let east = -Infinity;
  let north = -Infinity;
  for (let k = 0; k + 1 < ring.length; k += 2) {
    const x = ring[k] ?? 0;
    const y = ring[k + 1] ?? 0;
    west = Math.min(west, x);
    east = Math.max(east, x);
    south = Math.min(south, y);
    north = Math.max(north, y);
  }
  return { west, south, east, north };
}

const overlap = (a: Box, b: Box): boolean =>
  a.west < b.east && b.west < a.east && a.south < b.north && b.south < a.north;

const clipAll = (ring: FloatRing, { sides }: Strip): FloatRing =>
  sides.reduce<FloatRing>((rest, side) => clip(rest, side, 1), ring);

/** The pieces of a figure outside a strip: beyond its first side, then within that but beyond the next ... */
function outsideStrip(ring: FloatRing, { sides, box }: Strip): readonly FloatRing[] {
  if (!overlap(boxOf(ring), box)) return [ring];
  const pieces: FloatRing[] = [];
  let rest = ring;
  for (const side of sides) {
    const beyond = clip(rest, side, -1);
    if (beyond.length >= 6) pieces.push(beyond);
    rest = clip(rest, side, 1);
  }
  return pieces;
}

/**
 * The part of a figure on one side of a line, or beyond it if the sign is -1. If a concave figure
 * falls into several parts, edges there and back along the line keep them joined, and the area is
 * still right.
 */
function clip(ring: FloatRing, side: Side, sign: 1 | -1): FloatRing {
  const { nx, ny, ax, ay, reach } = side;
  const kept: number[] = [];
  const count = ring.length;
  for (let k = 0; k + 1 < count; k += 2) {
    const x = ring[k] ?? 0;
    const y = ring[k + 1] ?? 0;
    const nextX = ring[(k + 2) % count] ?? 0;
    const nextY = ring[(k + 3) % count] ?? 0;
    const here = sign * (nx * (x - ax) + ny * (y - ay) + reach);
    const there = sign * (nx * (nextX - ax) + ny * (nextY - ay) + reach);
    if (here >= 0) kept.push(x, y);
    if ((here < 0 && there > 0) || (here > 0 && there < 0)) {
      const share = here / (here - there);
      kept.push(x + share * (nextX - x), y + share * (nextY - y));
    }
  }
  return kept;
}

/** Twice the signed area, about the first point. */
function doubleArea(ring: FloatRing): number {
  const [x0 = 0, y0 = 0] = ring;
  let twice = 0;
  for (let k = 2; k + 3 < ring.length; k += 2) {
    const ax = ring[k] ?? 0;
    const ay = ring[k + 1] ?? 0;
    const bx = ring[k + 2] ?? 0;
    const by = ring[k + 3] ?? 0;
    twice += (ax - x0) * (by - y0) - (bx - x0) * (ay - y0);
  }
  return twice;
}
