import { entry, known } from '../invariant.js';
import { divideRatios, roughNumber, signOfRatio, type Ratio } from '../units/ratio.js';
import { readNumber } from '../units/read-number.js';
import { cross, dot, minus, plus, scaled, squared, type Vector } from '../units/vector.js';
import { chordsOf, isOutwardRight, pointsOfArc, toRight } from './chords.js';
import { moved, sideOf, type Corner } from './corner.js';
import { doubleArea } from './double-area.js';
import { meeting } from './meeting.js';
import { bulgeBetween, type Move, type MovedEdge } from './moved-ring.js';
import {
  NEAR_STEPS,
  SLIVER_STEPS,
  uniteRings,
  type UnitedCorner,
} from '../geometry/ring/unite-rings.js';

/** Chords of this angle [rad] are within 1/80 000 of the radius of their arc. */
const STEP = 0.01;

/**
 * The widened outline if edges vanish or it runs into itself: the union of the outline, the strip that
 * each edge sweeps and the corners between them. The package only finds the edges that bound it. Their
 * corners are worked out from the exact edges, so straight outlines stay exact. Arcs become chords.
 * Internal.
 *
 * @returns the outer ring counter-clockwise, holes clockwise; undefined if the package fails
 */
export function resolveOutline(
  moves: readonly Move[],
  made: readonly (readonly MovedEdge[])[],
): readonly (readonly Vector[])[] | undefined {
  const swept = moves.map((move, index) => sweptRing(move, entry(made, index)));
  // the outline itself is included, so no part of it is lost to an edge that has run backward
  const own = moves.map((move) => leftTurned(move, chordsOf(move.ring, move.isHole, STEP).points));
  const rings = [...swept, ...own];
  const given = rings.flat();
  const united = uniteRings(rings.map(floats));
  if (united === undefined) return undefined;
  const placing = { given, near: NEAR_STEPS * united.step };
  const sliver = SLIVER_STEPS * united.step * united.step;
  return united.rings
    .map((ring) =>
      tidy(
        ring.map((corner) => placed(corner, placing)),
        SAME_STEPS * united.step,
      ),
    )
    .filter((ring) => ring.length > 2 && Math.abs(roughNumber(doubleArea(ring))) > sliver);
}

/** The points in the order that keeps the paving on the left. */
const leftTurned = ({ ring, isHole }: Move, points: readonly Vector[]): readonly Vector[] =>
  isOutwardRight(ring, isHole) ? points : [...points].reverse();

/**
 * The line around the area that the edges sweep, with the paving on its left. At an edge that vanishes
 * it goes through the old corner instead of the point where the moved edges meet. Each strip is then
 * whole, and strips that overlap are united.
 */
function sweptRing(move: Move, edges: readonly MovedEdge[]): readonly Vector[] {
  const isRight = isOutwardRight(move.ring, move.isHole);
  const corners = edges.map((edge, index) =>
    sweptCorner(edge, known(edges.at(index - 1), 'such entry')),
  );
  const points = edges.flatMap((edge, index) => {
    const own = entry(corners, index);
    const [start, end] = [own.points.at(-1), corners[(index + 1) % corners.length]?.points[0]];
    const next = move.ring.points[(index + 1) % edges.length];
    const isArc = edge.arc !== undefined && start !== undefined && end !== undefined;
    if (!isArc || next === undefined) return cornerInChords(own, isRight);
    const corner = cornerInChords(own, isRight);
    if (!edge.vanishes) {
      const bulge = bulgeBetween(edge.arc, start, end);
      return [...corner, ...chordsBetween(start, end, { bulge, isRight })];
    }
    const inner = chordsBetween(edge.from, next, { bulge: move.ring.bulges?.[index], isRight });
    return [...corner, ...strips(edge, [edge.from, ...inner, next], isRight)];
  });
  return leftTurned(move, points);
}

function sweptCorner(edge: MovedEdge, before: MovedEdge): Corner {
  const { corner, from, start } = edge;
  const isMet = edge.isClean && !edge.vanishes && !before.vanishes;
  if (corner.isConvex || isMet) return corner;
  return { ...corner, points: [moved(from, before.end), from, moved(from, start)] };
}

function cornerInChords({ points, bulge, arcFrom }: Corner, isRight: boolean): Vector[] {
  return points.flatMap((point, place) => {
    const next = points[place + 1];
    if (place !== arcFrom || bulge === undefined || next === undefined) return [point];
    return [point, ...chordsBetween(point, next, { bulge, isRight })];
  });
}

interface ArcSide {
  readonly bulge: Ratio | undefined;
  readonly isRight: boolean;
}

/** The chord points between the ends of an arc. */
const chordsBetween = (a: Vector, b: Vector, { bulge, isRight }: ArcSide): readonly Vector[] =>
  bulge === undefined ? [] : pointsOfArc(a, b, { height: toRight(bulge, isRight), step: STEP });

/** The strips of an arc that has moved past its centre: one for each chord, out and back. */
function strips({ start }: MovedEdge, chain: readonly Vector[], isOutwardRight: boolean): Vector[] {
  return chain.slice(1).flatMap((to, index) => {
    const from = entry(chain, index);
    const side = sideOf(minus(to, from), start.distance, { isOutwardRight, isTangent: false });
    const isLast = index === chain.length - 2;
    return [moved(from, side), moved(to, side), ...(isLast ? [] : [to])];
  });
}

const floats = (ring: readonly Vector[]): Float64Array =>
  Float64Array.from(ring.flatMap(({ x, y }) => [roughNumber(x), roughNumber(y)]));

const vectorOf = (x: number, y: number): Vector => ({ x: readNumber(x), y: readNumber(y) });

interface Placing {
  readonly given: readonly Vector[];
  readonly near: number;
}

/** The exact location of a corner that the package has found. */
function placed(corner: UnitedCorner, placing: Placing): Vector {
  const { given, near } = placing;
  if (corner.given !== undefined) return entry(given, corner.given);
  if (corner.crossing === undefined) return vectorOf(...corner.at);
  const [a, b, c, d] = corner.crossing.map((place) => placed(place, placing));
  if (a === undefined || b === undefined || c === undefined || d === undefined) {
    return vectorOf(...corner.at);
  }
  const place = meeting({ point: a, along: minus(b, a) }, { point: c, along: minus(d, c) }, a);
  const [x, y] = corner.at;
  if (
    place !== undefined &&
    Math.abs(roughNumber(place.x) - x) < near &&
    Math.abs(roughNumber(place.y) - y) < near
  ) {
    return place;
  }
  return onLine(a, minus(b, a), vectorOf(x, y));
}

/** The point on the line from a along u nearest to a point; the area is the same for any point on it. */
function onLine(a: Vector, u: Vector, near: Vector): Vector {
  const share = divideRatios(dot(minus(near, a), u), squared(u));
  return plus(a, scaled(u, readNumber(roughNumber(share))));
}

/** Corners closer than this share of a step are one corner, worked out in two ways to 40 digits. */
const SAME_STEPS = 1e-12;

const isSame = (a: Vector, b: Vector, near: number): boolean => {
  const { x, y } = minus(a, b);
  return Math.abs(roughNumber(x)) < near && Math.abs(roughNumber(y)) < near;
};

/** Removes points that repeat the one before or are in line with their neighbours. */
function tidy(ring: readonly Vector[], near: number): readonly Vector[] {
  const apart = ring.filter(
    (point, index) => !isSame(point, known(ring.at(index - 1), 'such entry'), near),
  );
  return apart.filter((point, index) => {
    const before = minus(point, known(apart.at(index - 1), 'such entry'));
    const after = minus(entry(apart, (index + 1) % apart.length), point);
    return signOfRatio(cross(before, after)) !== 0;
  });
}
