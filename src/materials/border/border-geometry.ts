// A border is the outline moved inward; `outline` reads, moves and measures outlines.
import { entry, known, lastOf } from '../../invariant.js';
import { makeArc } from '../../outline/arc.js';
import { chordsOf } from '../../outline/chords.js';
import { contains } from '../../outline/contains.js';
import { crossingEdges } from '../../outline/crossing-edges.js';
import { moveEdges, ringOfMoved, type MovedEdge } from '../../outline/moved-ring.js';
import { ringsOf, type Outline, type Ring } from '../../outline/ring.js';
import { fault, type ErrorCode } from '../../errors.js';
import { exactOf, fromSI, type Length } from '../../units/quantity.js';
import {
  divideRatios,
  greaterRatio,
  lesserRatio,
  multiplyRatios,
  negateRatio,
  ratioToNumber,
  signOfRatio,
  subtractRatios,
  ZERO_RATIO,
  type Ratio,
} from '../../units/ratio.js';
import { cross, dot, minus, norm, type Vector } from '../../units/vector.js';

/** The border along one edge of the outline. */
export interface BorderSide {
  /** Index of the edge: edge k runs from point k to the next, those of the holes follow. */
  readonly edge: number;
  /** Length along the middle of the course, from corner to corner. */
  readonly centreLine: Length;
  /** Length along the longer side of the course, which mitred pavers must reach. */
  readonly longSide: Length;
}

/** An outline whose edges were moved inward. Internal. */
export interface MovedIn {
  readonly outline: Outline;
  /** Each moved edge of the outline, edges of holes last. */
  readonly edges: readonly EdgeMovedIn[];
}

interface EdgeMovedIn {
  readonly from: Vector;
  readonly to: Vector;
  /** Radius of an arc. */
  readonly radius: Ratio | undefined;
  /** True where the edge goes on from the one before without a corner. */
  readonly runsOn: boolean;
}

/**
 * Moves the edges of an outline inward, each by its own depth. The paving is treated as a hole that
 * shrinks, and its holes as outlines that grow. Faults count edges from `from`. Internal.
 */
export function moveIn(outline: Outline, depths: readonly Length[], from: 0 | 1): MovedIn {
  let first = 0;
  const moved = ringsOf(outline).map((ring, index) => {
    const start = first;
    first += ring.points.length;
    const distances = depths.slice(start, first).map(exactOf);
    const turned = insideOut(ring);
    const edges = moveEdges({ ring: turned, isHole: index === 0, distances, corners: 'mitred' });
    edges.forEach((edge, own) => {
      const params = { edge: start + own + from };
      const name = `edge ${params.edge} (counted from ${from})`;
      if (edge.vanishes) throw tooDeep(`at ${name} `, params);
      // a corner of two edges that stay where they are stays too
      const isMoved = [own - 1, own].some((at) => signOfRatio(known(distances.at(at), 'edge')) > 0);
      if (!isMoved || !isBarred(known(edges.at(own - 1), 'edge'), edge)) return;
      const words = `an arc meets the next edge at a corner where ${name} starts. A border needs a smooth join, so draw this arc as short straight edges`;
      throw refusal('ARC_MEETS_CORNER', words, params);
    });
    return { ring: insideOut(ringOfMoved(edges)), ends: endsOf(edges) };
  });
  const [outer = outline, ...holes] = moved.map(({ ring }) => ring);
  const inner: Outline = { ...outer, origin: outline.origin, holes };
  checkRoom(inner);
  return { outline: inner, edges: moved.flatMap(({ ends }) => ends) };
}

/** The same ring with its arcs seen from the other side. */
function insideOut({ points, bulges }: Ring): Ring {
  if (bulges === undefined) return { points };
  return { points, bulges: bulges.map((bulge) => bulge && negateRatio(bulge)) };
}

const endsOf = (edges: readonly MovedEdge[]): EdgeMovedIn[] =>
  edges.map((edge, index) => ({
    from: lastOf(edge.corner.points),
    to: entry(entry(edges, (index + 1) % edges.length).corner.points, 0),
    radius: edge.arc?.radius,
    runsOn: isSmooth(known(edges.at(index - 1), 'such entry'), edge),
  }));

/** Sine of the angle up to which an edge counts as running on into its neighbour. */
const SMOOTH = 0.005;

function isSmooth(before: MovedEdge, edge: MovedEdge): boolean {
  const [from, to] = [before.end.along, edge.start.along];
  const turn = ratioToNumber(divideRatios(cross(from, to), multiplyRatios(norm(from), norm(to))));
  return ratioToNumber(dot(from, to)) > 0 && Math.abs(turn) <= SMOOTH;
}

/** True for a corner of an arc, which a course cannot go round. */
const isBarred = (before: MovedEdge, edge: MovedEdge): boolean =>
  (edge.arc ?? before.arc) !== undefined && !(edge.isClean && isSmooth(before, edge));

const refusal = (code: ErrorCode, words: string, params = {}) =>
  fault(code, words, params, ['outline']);

const tooDeep = (where: string, params?: { readonly edge: number }) =>
  refusal(
    'BORDER_TOO_DEEP',
    `${where}the paving has no room for a border this deep. Leave the border out there, or choose a shallower course`,
    params,
  );

/** Refuses courses that run into each other, over a hole or past the edge. */
function checkRoom(inner: Outline): void {
  const chords = ringsOf(inner).map((ring, index) => chordsOf(ring, index > 0).points);
  const isApart = chords.every((hole, index) => {
    const [point] = hole;
    const others = chords.filter((_, other) => other > 0 && other !== index);
    if (index === 0 || point === undefined) return true;
    return contains(entry(chords, 0), point) && !others.some((other) => contains(other, point));
  });
  if (!isApart || crossingEdges(chords) !== undefined) throw tooDeep('');
}

/** The course along each edge, from its middle and its inner edge. Internal. */
export function sidesOf(outline: Outline, middle: MovedIn, inner: MovedIn): BorderSide[] {
  const edges = ringsOf(outline).flatMap(({ points, bulges }) =>
    points.map((from, index) => ({
      from,
      to: entry(points, (index + 1) % points.length),
      bulge: bulges?.[index],
    })),
  );
  return edges.map(({ from, to, bulge }, edge) => {
    const along = minus(to, from);
    const size = norm(along);
    const [half, whole] = [entry(middle.edges, edge), entry(inner.edges, edge)];
    if (bulge !== undefined) {
      const arc = makeArc(size, bulge);
      const at = (radius: Ratio = arc.radius) =>
        divideRatios(multiplyRatios(arc.length, radius), arc.radius);
      return side(edge, at(half.radius), greaterRatio(arc.length, at(whole.radius)));
    }
    const station = (point: Vector) => divideRatios(dot(minus(point, from), along), size);
    const [starts, ends] = [station(whole.from), station(whole.to)];
    return side(
      edge,
      subtractRatios(station(half.to), station(half.from)),
      subtractRatios(greaterRatio(size, ends), lesserRatio(ZERO_RATIO, starts)),
    );
  });
}

const side = (edge: number, centreLine: Ratio, longSide: Ratio): BorderSide => ({
  edge,
  centreLine: fromSI('length', centreLine),
  longSide: fromSI('length', longSide),
});
