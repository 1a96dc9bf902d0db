import {
  compareRatios,
  divideRatios,
  multiplyRatios,
  roughNumber,
  signOfRatio,
  ZERO_RATIO,
  type Ratio,
} from '../units/ratio.js';
import { readNumber } from '../units/read-number.js';
import { cross, dot, isZero, minus, plus, scaled, squared, type Vector } from '../units/vector.js';
import { chordsOf, isOutwardRight } from './chords.js';
import { moved } from './corner.js';
import { doubleArea } from './double-area.js';
import { meeting } from './meeting.js';
import { moveEdges, type Move, type MovedEdge } from './moved-ring.js';
import type { Ring } from './ring.js';
import { uniteRings, type UnitedCorner } from './unite-rings.js';

/** Chords this many radians long leave their arc by less than 1/80 000 of its radius. */
const STEP = 0.01;

/**
 * The widened outline where edges vanish or it runs into itself: the outline, the strip that each
 * edge sweeps and the corners between them, united. The package only finds out which edges bound the
 * figure; where they meet is worked out from the exact edges, so that straight outlines stay exact.
 * Arcs are put in chords. Internal.
 *
 * @returns the outer ring counter-clockwise, holes clockwise; undefined where the package fails
 */
export function resolveOutline(moves: readonly Move[]): readonly (readonly Vector[])[] | undefined {
  const straight = moves.map(inChords);
  const swept = straight.map(sweptRing);
  const own = straight.map(({ ring, isHole }) => turnedRight(ring, isHole));
  // the outline itself is put in too: nothing of it can be lost to an edge that has run backward
  const rings = [...swept, ...own];
  const given = rings.flat();
  const united = uniteRings(rings.map(floats));
  return united
    ?.map((ring) => tidy(ring.map((corner) => placed(corner, given))))
    .filter((ring) => ring.length > 2 && isLarge(ring));
}

/** A move with chords for arcs, so that all its edges are straight. */
function inChords(move: Move): Move {
  const { points, edgeOf } = chordsOf(move.ring, move.isHole, STEP);
  const distances = edgeOf.map((edge) => move.distances[edge] ?? ZERO_RATIO);
  return { ...move, ring: { points }, distances };
}

/** A ring with the paving on its left. */
function turnedRight(ring: Ring, isHole: boolean): readonly Vector[] {
  return isOutwardRight(ring, isHole) ? ring.points : [...ring.points].reverse();
}

/**
 * The line round all that the edges sweep, with the paving on its left. Where an edge vanishes, it
 * goes through the old corner instead of the place where the moved edges would meet: each strip is
 * then whole, and strips that overlap are united.
 */
function sweptRing(move: Move): Vector[] {
  const edges = moveEdges(move);
  const points = edges.flatMap((edge, index) =>
    sweptCorner(edge, edges.at(index - 1) ?? edge, move),
  );
  return isOutwardRight(move.ring, move.isHole) ? points : points.reverse();
}

function sweptCorner(edge: MovedEdge, before: MovedEdge, move: Move): readonly Vector[] {
  const { corner, from, start } = edge;
  if (!corner.isConvex && (edge.vanishes || before.vanishes)) {
    return [moved(from, before.end), from, moved(from, start)];
  }
  if (corner.bulge === undefined) return corner.points;
  const [a, b] = corner.points;
  if (a === undefined || b === undefined) return corner.points;
  const isRight = isOutwardRight(move.ring, move.isHole);
  // the arc of a round corner, closed by its chord: only the first half is wanted
  const arc: Ring = { points: isRight ? [a, b] : [b, a], bulges: [corner.bulge, undefined] };
  const { points } = chordsOf(arc, false, STEP);
  const between = points.slice(1, -1);
  return [a, ...(isRight ? between : between.reverse()), b];
}

const floats = (ring: readonly Vector[]): Float64Array =>
  Float64Array.from(ring.flatMap(({ x, y }) => [roughNumber(x), roughNumber(y)]));

/** Further than this from where the package found it, a crossing is one of edges almost in line. */
const NEAR = 1e-5;

const vectorOf = (x: number, y: number): Vector => ({ x: readNumber(x), y: readNumber(y) });

/** The exact place of a corner that the package has found. */
function placed(corner: UnitedCorner, given: readonly Vector[]): Vector {
  if (corner.given !== undefined) return given[corner.given] ?? vectorOf(...corner.at);
  if (corner.crossing === undefined) return vectorOf(...corner.at);
  const [a, b, c, d] = corner.crossing.map((place) => placed(place, given));
  if (a === undefined || b === undefined || c === undefined || d === undefined) {
    return vectorOf(...corner.at);
  }
  const place = meeting({ point: a, along: minus(b, a) }, { point: c, along: minus(d, c) }, a);
  const [x, y] = corner.at;
  if (
    place !== undefined &&
    Math.abs(roughNumber(place.x) - x) < NEAR &&
    Math.abs(roughNumber(place.y) - y) < NEAR
  ) {
    return place;
  }
  return onLine(a, minus(b, a), vectorOf(x, y));
}

/** The place on the line from a along u next to a point: any place on it leaves the area as it is. */
function onLine(a: Vector, u: Vector, near: Vector): Vector {
  const share = divideRatios(dot(minus(near, a), u), squared(u));
  return plus(a, scaled(u, readNumber(roughNumber(share))));
}

/** Leaves out points that repeat the one before or lie on the way from it to the next. */
function tidy(ring: readonly Vector[]): readonly Vector[] {
  const apart = ring.filter((point, index) => !isZero(minus(point, ring.at(index - 1) ?? point)));
  return apart.filter((point, index) => {
    const before = minus(point, apart.at(index - 1) ?? point);
    const after = minus(apart[(index + 1) % apart.length] ?? point, point);
    return signOfRatio(cross(before, after)) !== 0;
  });
}

/** Slivers that only the grid of the package can have left are no holes: below a hundredth of a square millimetre. */
const SLIVER: Ratio = readNumber('1e-8');

function isLarge(ring: readonly Vector[]): boolean {
  const twice = doubleArea(ring);
  return compareRatios(multiplyRatios(twice, twice), multiplyRatios(SLIVER, SLIVER)) > 0;
}
