import { addBows, addCells, makeClip, type Clip } from './clip.js';
import { takeHeights } from './height-on.js';
import { makeHeights } from './heights.js';
import type { Rings } from './outline-mesh.js';
import { singlesOf } from './parts.js';
import { cutToTriangle, makePiece, setTriangle, type Piece } from './piece.js';
import { makeTally, SUMS, type Extremes, type Tally } from './tally.js';
import type { Parts, Surface } from './triangulation.js';
import { at } from '../floats.js';
import { walkPairs } from './walk-pairs.js';
import { makeWaySums } from './way-sums.js';

/** Of the size of two heights: a difference that their rounding can make is neither cut nor fill. */
const NO_DEPTH = 16 * Number.EPSILON;

/** Which surface is gone through, which one is laid over it, and how their heights become depths. */
interface Sides {
  readonly main: Surface;
  readonly other: Surface;
  readonly sign: 1 | -1;
  /** Depths up to this are none. */
  readonly least: number;
}

/** Adds cut and fill between two surfaces; returns what diagonals leave open. Internal. */
export function compareSurfaces(
  existing: Surface,
  design: Surface,
  rings: Rings | undefined,
  tally: Tally & Extremes,
): number {
  const isExistingFiner = existing.triangles.length >= design.triangles.length;
  const [main, other] = isExistingFiner ? [existing, design] : [design, existing];
  const least = NO_DEPTH * (largest(main.z) + largest(other.z));
  const sides: Sides = { main, other, sign: isExistingFiner ? 1 : -1, least };
  if (rings !== undefined && rings.bows.length > 0) addBows(rings, depthsBetween(sides), tally);
  if (main.parts !== undefined || other.parts !== undefined) return addParts(sides, rings, tally);
  addTriangles(sides, rings, tally);
  return 0;
}

const largest = (z: Float64Array): number =>
  z.reduce((most, height) => Math.max(most, Math.abs(height)), 0);

function depthsBetween({ main, other, sign, least }: Sides) {
  const [heightAt, otherAt] = [makeHeights(main), makeHeights(other)];
  return (x: number, y: number): number | undefined => {
    const [one, two] = [heightAt(x, y), otherAt(x, y)];
    if (one === undefined || two === undefined) return undefined;
    return Math.abs(one - two) <= least ? 0 : sign * (one - two);
  };
}

/** Goes through the surface with more triangles, each with the few of the other that it meets. */
function addTriangles(sides: Sides, rings: Rings | undefined, tally: Tally): void {
  const { main, other } = sides;
  const add = makeAdder(sides, rings && makeClip(main, rings));
  walkPairs(main, other, (i, overlapped) => {
    if (!add.take(i)) return;
    for (const j of overlapped) add.against(j, tally);
  });
}

/** Adds each pair of parts as the mean over the ways that both can be drawn. */
function addParts(sides: Sides, rings: Rings | undefined, tally: Tally & Extremes): number {
  const { main, other } = sides;
  const [parts, otherParts] = [main.parts ?? singlesOf(main), other.parts ?? singlesOf(other)];
  const drawn = { ...main, triangles: parts.triangles };
  const add = makeAdder(
    { ...sides, main: drawn, other: { ...other, triangles: otherParts.triangles } },
    rings && makeClip(drawn, rings),
  );
  const [waySums, otherWaySums] = [makeWaySums(parts), makeWaySums(otherParts)];
  const [one, sums] = [makeTally(tally), new Float64Array(SUMS)];
  for (const [part, beside] of pairsOfParts(sides, parts, otherParts)) {
    const ways = parts.ways[part] ?? 1;
    forEachTriangle(parts, part, (i, way) => {
      if (!add.take(i)) return;
      for (const otherPart of beside) {
        const otherWays = otherParts.ways[otherPart] ?? 1;
        forEachTriangle(otherParts, otherPart, (j, otherWay) => {
          if (ways * otherWays === 1) {
            add.against(j, tally);
            return;
          }
          add.against(j, one);
          one.take(sums);
          tally.share(sums, 1 / (ways * otherWays));
          waySums.add(part, way, sums, 1 / otherWays);
          otherWaySums.add(otherPart, otherWay, sums, 1 / ways);
        });
      }
    });
  }
  return waySums.doubt() + otherWaySums.doubt();
}

/** The parts of the other surface that each part of the main one shares area with. */
function pairsOfParts(
  { main, other }: Sides,
  { partOf }: Parts,
  otherParts: Parts,
): Map<number, Set<number>> {
  const pairs = new Map<number, Set<number>>();
  walkPairs(main, other, (i, overlapped) => {
    const part = partOf[i] ?? 0;
    const beside = pairs.get(part) ?? new Set();
    for (const j of overlapped) beside.add(otherParts.partOf[j] ?? 0);
    pairs.set(part, beside);
  });
  return pairs;
}

function forEachTriangle(
  { first, ways, size }: Parts,
  part: number,
  visit: (triangle: number, way: number) => void,
): void {
  const [start, count] = [first[part] ?? 0, size[part] ?? 1];
  for (let way = 0; way < (ways[part] ?? 1); way += 1) {
    for (let k = 0; k < count; k += 1) visit(start + way * count + k, way);
  }
}

interface Adder {
  /** Takes up triangle i of the main surface; false where it lies outside the outline. */
  readonly take: (i: number) => boolean;
  /** Adds what it shares with triangle j of the other surface. */
  readonly against: (j: number, tally: Tally) => void;
}

function makeAdder(sides: Sides, clip: Clip | undefined): Adder {
  const { main, other } = sides;
  const [piece, shared, to, spare] = [makePiece(), makePiece(), makePiece(), makePiece()];
  const room = { to: shared, spare };
  let place: 'inside' | 'outside' | 'cut' = 'inside';
  return {
    take(i) {
      if (clip !== undefined) place = clip.inside.place(i);
      if (place === 'outside') return false;
      setTriangle(piece, main, i, main.z);
      return true;
    },
    against(j, tally) {
      cutToTriangle(piece, other, j, room);
      if (shared.count < 3) return;
      subtract(shared, j, sides);
      if (clip === undefined || place === 'inside') tally.piece(shared);
      else addCells(shared, clip, { to, spare, tally });
    },
  };
}

/** Puts depths in the place of the heights of the main surface. */
function subtract({ values, count }: Piece, j: number, { other, sign, least }: Sides): void {
  takeHeights(other, j, values, count);
  for (let p = 2; p < 3 * count; p += 3) {
    const depth = at(values, p);
    values[p] = Math.abs(depth) <= least ? 0 : sign * depth;
  }
}
