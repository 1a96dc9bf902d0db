import { entry, known, lastOf } from '../invariant.js';
import {
  addRatios,
  compareRatios,
  divideRatios,
  negateRatio,
  roughNumber,
  signOfRatio,
  subtractRatios,
  wholeRatio,
  type Ratio,
} from '../units/ratio.js';
import { cross, dot, minus, plus, share, squared, type Vector } from '../units/vector.js';
import { arcOf, endDirections, otherLeg } from './arc.js';
import { isOutwardRight } from './chords.js';
import { corner, moved, settled, sideOf, type Corner, type Corners, type Side } from './corner.js';
import { meeting, type Circle, type Run } from './meeting.js';
import { forEachEdge, type Ring } from './ring.js';

/** A ring, and the outward move of each edge. Internal. */
export interface Move {
  readonly ring: Ring;
  readonly isHole: boolean;
  /** One for each edge, in metres; negative moves inward. */
  readonly distances: readonly Ratio[];
  readonly corners: Corners;
}

/** A moved edge with the corner at its start. Internal. */
export interface MovedEdge {
  readonly from: Vector;
  readonly start: Side;
  readonly end: Side;
  /** The corner at the start of the edge. */
  readonly corner: Corner;
  /** The moved arc; none for a straight edge. */
  readonly arc: MovedArc | undefined;
  /** True if the edge has vanished between its two corners. */
  readonly vanishes: boolean;
  /** False if the two edges of the corner do not meet. */
  readonly isClean: boolean;
}

/** A moved arc, with the same angle about the same centre. */
interface MovedArc extends Circle {
  /** True if it is to the right of its chord. */
  readonly isRight: boolean;
  readonly isOut: boolean;
}

/** Moves the edges of a ring and makes its corners. Internal. */
export function moveEdges(move: Move): readonly MovedEdge[] {
  const isRight = isOutwardRight(move.ring, move.isHole);
  const style = { corners: move.corners, isOutwardRight: isRight };
  const edges = edgesOf(move, isRight);
  const corners = edges.map((edge, index) => {
    const before = known(edges.at(index - 1), 'such entry');
    const made = corner(edge.from, before.end, edge.start, style);
    if (before.arc === undefined && edge.arc === undefined)
      return { edge, corner: made, isClean: true };
    return { edge, ...joined(made, before, edge) };
  });
  return corners.map(({ edge, corner: made, isClean }, index): MovedEdge => {
    const next = entry(corners, (index + 1) % corners.length).corner;
    const { from, start, end, arc } = edge;
    // field by field: spreading took longer than the corner of a rectangle
    return {
      from,
      start,
      end,
      arc,
      corner: made,
      isClean,
      vanishes: vanishes(edge, made, next),
    };
  });
}

type Edge = Pick<MovedEdge, 'from' | 'start' | 'end' | 'arc'>;

function edgesOf({ ring, distances }: Move, isOutwardRight: boolean): Edge[] {
  const edges: Edge[] = [];
  forEachEdge(ring.points, (from, to, index) => {
    const distance = entry(distances, index);
    const bulge = ring.bulges?.[index];
    if (bulge === undefined) {
      const side = sideOf(minus(to, from), distance, { isOutwardRight, isTangent: false });
      edges.push({ from, start: side, end: side, arc: undefined });
    } else edges.push(movedArc(from, to, { bulge, distance, isOutwardRight }));
  });
  return edges;
}

function movedArc(
  from: Vector,
  to: Vector,
  options: { bulge: Ratio; distance: Ratio; isOutwardRight: boolean },
): Edge {
  const { bulge, distance, isOutwardRight } = options;
  const [first, last] = endDirections(from, to, isOutwardRight ? bulge : negateRatio(bulge));
  const { radius, chord } = arcOf(from, to, bulge);
  const isOut = signOfRatio(bulge) > 0;
  const style = { isOutwardRight, isTangent: true };
  const start = sideOf(first, distance, style);
  const toCentre = share(start.outward, isOut ? negateRatio(radius) : radius, chord);
  return {
    from,
    start,
    end: sideOf(last, distance, style),
    arc: {
      centre: plus(from, settled(toCentre, true)),
      radius: (isOut ? addRatios : subtractRatios)(radius, distance),
      isRight: isOut === isOutwardRight,
      isOut,
    },
  };
}

/**
 * A moved arc that ends within a millimetre of its corner is extended to it; the error is less than
 * that distance squared over its diameter.
 */
const CLOSE: Ratio = Object.freeze({ n: 1, d: 1e6 });

const areApart = (a: Vector, b: Vector): boolean => compareRatios(squared(minus(a, b)), CLOSE) > 0;

/**
 * Fits arcs to a corner that was made with their tangents. If the corner is beyond the end of an
 * arc, the tangent stays; if it is on the arc, the arc is cut where the edges meet.
 */
function joined(made: Corner, before: Edge, after: Edge): Pick<MovedEdge, 'corner' | 'isClean'> {
  const [first, last] = [entry(made.points, 0), lastOf(made.points)];
  const end = before.arc === undefined ? first : moved(after.from, before.end);
  const start = after.arc === undefined ? last : moved(after.from, after.start);
  const isEndApart = areApart(end, first);
  const isStartApart = areApart(start, last);
  const isEndCut = isEndApart && signOfRatio(dot(minus(first, end), before.end.along)) < 0;
  const isStartCut = isStartApart && signOfRatio(dot(minus(last, start), after.start.along)) > 0;
  const lead = isEndApart && !isEndCut ? [end] : [];
  const trail = isStartApart && !isStartCut ? [start] : [];
  if (!isEndCut && !isStartCut) {
    const points = [...lead, ...made.points, ...trail];
    return { corner: { ...made, points, arcFrom: lead.length }, isClean: true };
  }
  const place = meeting(
    runOf(isEndCut ? before.arc : undefined, first, before.end),
    runOf(isStartCut ? after.arc : undefined, last, after.start),
    first,
  );
  if (place === undefined) return { corner: made, isClean: false };
  const points = [...lead, settled(place, true), ...trail];
  return { corner: { points, isConvex: made.isConvex, isLong: made.isLong }, isClean: true };
}

const runOf = (arc: MovedArc | undefined, point: Vector, { along }: Side): Run =>
  arc ?? { point, along };

function vanishes(edge: Edge, own: Corner, next: Corner): boolean {
  const [start, end] = [lastOf(own.points), entry(next.points, 0)];
  const along = minus(end, start);
  if (edge.arc !== undefined) return arcVanishes(edge.arc, [start, end], edge);
  const { x, y } = edge.start.along;
  // floats decide if rounding cannot change the answer
  const [dx, dy] = [roughNumber(along.x) * roughNumber(x), roughNumber(along.y) * roughNumber(y)];
  if (dx >= 0 && dy >= 0 && dx + dy > 0) return false;
  return signOfRatio(dot(along, edge.start.along)) <= 0;
}

/** True if an arc has moved to its centre, or its two cut ends have passed each other. */
function arcVanishes(arc: MovedArc, [start, end]: readonly [Vector, Vector], edge: Edge): boolean {
  if (signOfRatio(arc.radius) <= 0) return true;
  const directionOf = ({ x, y }: Vector, turned: boolean) =>
    Math.atan2(roughNumber(y), roughNumber(x)) + (turned ? Math.PI : 0);
  const [first, last] = [edge.start, edge.end].map(({ outward }) =>
    directionOf(outward, !arc.isOut),
  );
  // counter-clockwise about the centre with the arc on the right of the chord
  const forward = (from: number, to: number) => (arc.isRight ? to - from : from - to);
  const cutFrom = (old: number, at: Vector) =>
    nearZero(forward(old, directionOf(minus(at, arc.centre), false)));
  const [from = 0, to = 0] = [first, last];
  const whole = nearZero(forward(from, to) - Math.PI) + Math.PI;
  return cutFrom(from, start) >= whole + cutFrom(to, end);
}

/** The same angle, in the range -pi to pi. */
const nearZero = (angle: number): number => angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));

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
      if (isLast) bulges.push(arc && start && next && bulgeBetween(arc, start, next));
      else bulges.push(place === own.arcFrom ? own.bulge : undefined);
    });
  });
  return bulges.every((bulge) => bulge === undefined) ? { points } : { points, bulges };
}

/**
 * Middle ordinate of a moved arc between its corners: `M = R - sqrt(R^2 - C^2 / 4)`, with a plus if
 * it is more than half a circle. Internal.
 */
export function bulgeBetween(arc: MovedArc, start: Vector, end: Vector): Ratio {
  const along = minus(end, start);
  const quarter = divideRatios(squared(along), wholeRatio(4));
  const toChord = otherLeg(arc.radius, quarter);
  const isCentreRight = signOfRatio(cross(along, minus(arc.centre, start))) < 0;
  const isMoreThanHalf = isCentreRight === arc.isRight;
  const height = (isMoreThanHalf ? addRatios : subtractRatios)(arc.radius, toChord);
  return arc.isOut ? height : negateRatio(height);
}
