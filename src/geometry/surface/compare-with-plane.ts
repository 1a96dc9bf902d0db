import { addBows, addCells, makeClip } from './clip.js';
import { makeHeights } from './heights.js';
import type { Rings } from './outline-mesh.js';
import { makePiece, setTriangle } from './piece.js';
import { makeTally, SUMS, type Extremes, type Tally } from './tally.js';
import { areaOf, corner, type Parts, type Surface } from './triangulation.js';
import { at } from '../floats.js';
import { makeWaySums } from './way-sums.js';

/** A plane `z = z0 + gradeX x + gradeY y`. Internal. */
export interface LocalPlane {
  readonly z0: number;
  readonly gradeX: number;
  readonly gradeY: number;
}

/** Of the size of two heights: a difference that their rounding can make is neither cut nor fill. */
const NO_DEPTH = 16 * Number.EPSILON;

/** Adds cut and fill between a surface and a plane; returns what diagonals leave open. Internal. */
export function compareWithPlane(
  surface: Surface,
  plane: LocalPlane,
  rings: Rings | undefined,
  tally: Tally & Extremes,
): number {
  const { xy, z, parts } = surface;
  const depths = new Float64Array(z.length);
  for (let k = 0; k < z.length; k += 1) {
    depths[k] = depthOver(plane, at(xy, 2 * k), at(xy, 2 * k + 1), at(z, k));
  }
  if (rings !== undefined && rings.bows.length > 0) {
    const heightAt = makeHeights(surface);
    const depthAt = (x: number, y: number): number | undefined => {
      const height = heightAt(x, y);
      return height === undefined ? undefined : depthOver(plane, x, y, height);
    };
    addBows(rings, depthAt, tally);
  }
  if (rings === undefined && parts === undefined) {
    addAll(surface, depths, tally);
    return 0;
  }
  const drawn = parts === undefined ? surface : { ...surface, triangles: parts.triangles };
  const add = makeAdder(drawn, depths, rings);
  if (parts !== undefined) return addParts(parts, add, tally);
  for (let i = 0; i < drawn.triangles.length / 3; i += 1) add(i, tally);
  return 0;
}

function depthOver({ z0, gradeX, gradeY }: LocalPlane, x: number, y: number, z: number): number {
  const alongX = gradeX * x;
  const alongY = gradeY * y;
  const depth = z - (z0 + alongX + alongY);
  const size = Math.abs(z) + Math.abs(z0) + Math.abs(alongX) + Math.abs(alongY);
  return Math.abs(depth) <= NO_DEPTH * size ? 0 : depth;
}

/** Adds every triangle, its area worked out in place: most of a million points goes this way. */
function addAll({ xy, triangles }: Surface, depths: Float64Array, tally: Tally): void {
  for (let k = 0; k < depths.length; k += 1) {
    tally.depth(at(depths, k), at(xy, 2 * k), at(xy, 2 * k + 1));
  }
  for (let i = 0; i < triangles.length; i += 3) {
    const a = triangles[i] ?? 0;
    const b = triangles[i + 1] ?? 0;
    const c = triangles[i + 2] ?? 0;
    const x = at(xy, 2 * a);
    const y = at(xy, 2 * a + 1);
    const double =
      (at(xy, 2 * b) - x) * (at(xy, 2 * c + 1) - y) - (at(xy, 2 * b + 1) - y) * (at(xy, 2 * c) - x);
    tally.triangle(Math.abs(double) / 2, at(depths, a), at(depths, b), at(depths, c));
  }
}

type Adder = (i: number, tally: Tally) => void;

/** Adds triangle i of a surface, inside the outline where there is one. */
function makeAdder(surface: Surface, depths: Float64Array, rings: Rings | undefined): Adder {
  const whole: Adder = (i, tally) => {
    addTriangle(surface, i, depths, tally);
  };
  if (rings === undefined) return whole;
  const clip = makeClip(surface, rings);
  const [piece, to, spare] = [makePiece(), makePiece(), makePiece()];
  return (i, tally) => {
    const place = clip.inside.place(i);
    if (place === 'inside') whole(i, tally);
    if (place !== 'cut') return;
    setTriangle(piece, surface, i, depths);
    addCells(piece, clip, { to, spare, tally });
  };
}

function addTriangle(surface: Surface, i: number, depths: Float64Array, tally: Tally): void {
  const { xy } = surface;
  const a = corner(surface, i, 0);
  const b = corner(surface, i, 1);
  const c = corner(surface, i, 2);
  tally.triangle(areaOf(surface, i), at(depths, a), at(depths, b), at(depths, c));
  tally.depth(at(depths, a), at(xy, 2 * a), at(xy, 2 * a + 1));
  tally.depth(at(depths, b), at(xy, 2 * b), at(xy, 2 * b + 1));
  tally.depth(at(depths, c), at(xy, 2 * c), at(xy, 2 * c + 1));
}

/** Adds each part as the mean over the ways it can be drawn; returns what they leave open. */
function addParts(parts: Parts, add: Adder, tally: Tally & Extremes): number {
  const [one, sums, waySums] = [makeTally(tally), new Float64Array(SUMS), makeWaySums(parts)];
  for (let part = 0; part < parts.first.length; part += 1) {
    const [first, ways] = [parts.first[part] ?? 0, parts.ways[part] ?? 1];
    const size = parts.size[part] ?? 1;
    if (ways === 1) {
      add(first, tally);
      continue;
    }
    for (let way = 0; way < ways; way += 1) {
      for (let k = 0; k < size; k += 1) add(first + way * size + k, one);
      one.take(sums);
      tally.share(sums, 1 / ways);
      waySums.add(part, way, sums, 1);
    }
  }
  return waySums.doubt();
}
