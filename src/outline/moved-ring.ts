import {
  addRatios,
  compareRatios,
  decimalRatio,
  divideRatios,
  multiplyRatios,
  negateRatio,
  signOfRatio,
  subtractRatios,
  wholeRatio,
  ZERO_RATIO,
  type Ratio,
} from '../units/ratio.js';
import { Wide } from '../units/decimal.js';
import { squareRoot } from '../units/root.js';
import { dot, minus, norm, opposite, squared, type Vector } from '../units/vector.js';
import { arcOf, endDirections } from './arc.js';
import { isOutwardRight } from './chords.js';
import { corner, moved, type Corner, type Corners, type Side } from './corner.js';
import { forEachEdge, type Ring } from './ring.js';

/** A ring whose edges are to move out of the paving, each by its own distance. Internal. */
export interface Move {
  readonly ring: Ring;
  readonly isHole: boolean;
  /** One for each edge, in metres, not negative. */
  readonly distances: readonly Ratio[];
  readonly corners: Corners;
}

/** An edge with the corner it starts from, once moved. Internal. */
export interface MovedEdge {
  readonly from: Vector;
  readonly start: Side;
  readonly end: Side;
  /** The corner at the start of the edge. */
  readonly corner: Corner;
  /** What an arc has become; none for a straight edge. */
  readonly arc: MovedArc | undefined;
  /** True where nothing of the edge is left between its two corners. */
  readonly vanishes: boolean;
  /** False where an arc would have to be cut at the corner. */
  readonly isClean: boolean;
}

interface MovedArc {
  /** Middle ordinate of the arc with the same angle about the same centre, + outward. */
  readonly bulge: Ratio;
  /** Not positive where the arc has moved past its centre. */
  readonly radius: Ratio;
  readonly isMoreThanHalf: boolean;
}

/** Moves the edges of a ring and makes its corners. Internal. */
export function moveEdges(move: Move): readonly MovedEdge[] {
  const isRight = isOutwardRight(move.ring, move.isHole);
  const style = { corners: move.corners, isOutwardRight: isRight };
  const edges = edgesOf(move, isRight);
  const corners = edges.map((edge, index) => {
    const before = edges.at(index - 1) ?? edge;
    return joined(corner(edge.from, before.end, edge.start, style), before, edge);
  });
  return edges.map((edge, index): MovedEdge => {
    const own = corners[index];
    const next = corners[(index + 1) % corners.length] ?? own;
    if (own === undefined || next === undefined) throw new RangeError('an edge without a corner');
    return { ...edge, ...own, vanishes: vanishes(edge, own.corner, next.corner) };
  });
}

type Edge = Pick<MovedEdge, 'from' | 'start' | 'end' | 'arc'>;

function edgesOf({ ring, distances }: Move, isRight: boolean): Edge[] {
  const edges: Edge[] = [];
  forEachEdge(ring.points, (from, to, index) => {
    const distance = distances[index] ?? ZERO_RATIO;
    const bulge = ring.bulges?.[index];
    if (bulge === undefined) {
      const side = sideOf(minus(to, from), distance, isRight);
      edges.push({ from, start: side, end: side, arc: undefined });
    } else edges.push(movedArc(from, to, { bulge, distance, isRight }));
  });
  return edges;
}

function movedArc(
  from: Vector,
  to: Vector,
  { bulge, distance, isRight }: { bulge: Ratio; distance: Ratio; isRight: boolean },
): Edge {
  const [first, last] = endDirections(from, to, isRight ? bulge : negateRatio(bulge));
  const { radius, height } = arcOf(from, to, bulge);
  const isOut = signOfRatio(bulge) > 0;
  const left = isOut ? addRatios(radius, distance) : subtractRatios(radius, distance);
  return {
    from,
    start: sideOf(first, distance, isRight),
    end: sideOf(last, distance, isRight),
    arc: {
      bulge: divideRatios(multiplyRatios(bulge, left), radius),
      radius: left,
      isMoreThanHalf: compareRatios(height, radius) > 0,
    },
  };
}

function sideOf(along: Vector, distance: Ratio, isRight: boolean): Side {
  const right = { x: along.y, y: negateRatio(along.x) };
  return { along, outward: isRight ? right : opposite(right), size: norm(along), distance };
}

/**
 * A moved arc that ends within a millimetre of its corner is led to it: it misses by less than that
 * squared over its diameter.
 */
const CLOSE = decimalRatio(new Wide('1e-6'));

/** Leads the ends of moved arcs, which do not run on straight, to the corner. */
function joined(made: Corner, before: Edge, after: Edge): Pick<MovedEdge, 'corner' | 'isClean'> {
  if (made.bulge !== undefined) return { corner: made, isClean: true };
  const points = [...made.points];
  const isApart = (a: Vector, b: Vector | undefined) =>
    b !== undefined && compareRatios(squared(minus(a, b)), CLOSE) > 0;
  const end = before.arc && moved(after.from, before.end);
  if (end !== undefined && isApart(end, points[0])) points.unshift(end);
  const start = after.arc && moved(after.from, after.start);
  if (start !== undefined && isApart(start, points.at(-1))) points.push(start);
  const isClean = made.isConvex || points.length === made.points.length;
  return { corner: { ...made, points }, isClean };
}

function vanishes(edge: Edge, own: Corner, next: Corner): boolean {
  if (edge.arc !== undefined) return signOfRatio(edge.arc.radius) <= 0;
  const [start, end] = [own.points.at(-1), next.points[0]];
  if (start === undefined || end === undefined) return true;
  return signOfRatio(dot(minus(end, start), edge.start.along)) <= 0;
}

/** The ring that the moved edges make, corners and arcs included. Internal. */
export function ringOfMoved(edges: readonly MovedEdge[]): Ring {
  const points: Vector[] = [];
  const bulges: (Ratio | undefined)[] = [];
  edges.forEach(({ corner: own, arc }, index) => {
    const next = edges[(index + 1) % edges.length]?.corner.points[0];
    const start = own.points.at(-1);
    own.points.forEach((point, place) => {
      const isLast = place === own.points.length - 1;
      points.push(point);
      bulges.push(isLast ? arc && start && next && bulgeBetween(arc, start, next) : own.bulge);
    });
  });
  return bulges.every((bulge) => bulge === undefined) ? { points } : { points, bulges };
}

/** Middle ordinate of a moved arc between the corners it was led to: `M = R - sqrt(R^2 - C^2 / 4)`. */
function bulgeBetween(arc: MovedArc, start: Vector, end: Vector): Ratio {
  const quarter = divideRatios(squared(minus(end, start)), wholeRatio(4));
  const rest = subtractRatios(multiplyRatios(arc.radius, arc.radius), quarter);
  if (signOfRatio(rest) <= 0) return arc.bulge;
  const toChord = squareRoot(rest);
  const height = (arc.isMoreThanHalf ? addRatios : subtractRatios)(arc.radius, toChord);
  return signOfRatio(arc.bulge) < 0 ? negateRatio(height) : height;
}
