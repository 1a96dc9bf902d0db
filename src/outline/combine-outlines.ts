import { fault, type FieldPath } from '../errors.js';
import type { FigureEdge } from '../geometry/figure/bound.js';
import { combineFigures, type Outlining } from '../geometry/figure/combine-figures.js';
import type { Node } from '../geometry/figure/pieces.js';
import { entry, known } from '../invariant.js';
import {
  divideRatios,
  roughNumber,
  signOfRatio,
  subtractRatios,
  ZERO_RATIO as ZERO,
  HALF_RATIO,
  type Ratio,
} from '../units/ratio.js';
import { readNumber } from '../units/read-number.js';
import { between, cross, isZero, minus, plus, scaled, type Vector } from '../units/vector.js';
import { arcOf } from './arc.js';
import { isOutwardRight } from './chords.js';
import { settled, to40Digits } from './corner.js';
import { halved } from './halved.js';
import { meeting, type Circle, type Run } from './meeting.js';
import { bulgeBetween } from './moved-ring.js';
import { forEachEdge, ringsOf, type Outline, type Ring } from './ring.js';

/** An exact edge with the paving on its left; `bulge` is + to the right of travel. */
interface Edge {
  readonly from: Vector;
  readonly to: Vector;
  readonly bulge: Ratio | undefined;
}

/**
 * The union (`any`) or the intersection (`all`) of outlines, relative to the origin of the first. The
 * kernel finds the stretches of edges that bound it. Their corners are worked out from the exact edges,
 * so straight outlines stay exact. Points on arcs are kept to 40 digits. Internal.
 */
export function combineOutlines(
  outlines: readonly Outline[],
  covered: 'any' | 'all',
  path: FieldPath,
): readonly Outline[] {
  const origin = outlines[0]?.origin;
  if (origin === undefined) return [];
  const exact = outlines.map((outline) => edgesOf(outline, between(origin, outline.origin)));
  const figures = exact.map((rings) => rings.map((ring) => ring.map(floatEdge)));
  const combined = combineFigures(figures, covered);
  if (combined === undefined) {
    const words = 'the outlines could not be combined. Enter the combined outline by hand';
    throw fault('OUTLINE_UNRESOLVED', words, {}, path);
  }
  const placing = placingOn(exact.flat(2));
  return combined.map(({ outer, holes }): Outline => {
    const ringOf = (line: Outlining, isHole: boolean) => legible(placing(line), isHole);
    return { origin, ...ringOf(outer, false), holes: holes.map((hole) => ringOf(hole, true)) };
  });
}

/** The edges of each ring, moved by `shift`. */
function edgesOf(outline: Outline, shift: Vector): Edge[][] {
  return ringsOf(outline).map((ring, index) => {
    const edges: Edge[] = [];
    const isRight = isOutwardRight(ring, index > 0);
    forEachEdge(ring.points, (a, b, edge) => {
      const [from, to] = isRight ? [a, b] : [b, a];
      edges.push({ from: plus(from, shift), to: plus(to, shift), bulge: ring.bulges?.[edge] });
    });
    return isRight ? edges : edges.reverse();
  });
}

const spotOf = ({ x, y }: Vector) => ({ x: roughNumber(x), y: roughNumber(y) });

const floatEdge = ({ from, to, bulge }: Edge): FigureEdge => ({
  from: spotOf(from),
  to: spotOf(to),
  bulge: bulge === undefined ? 0 : roughNumber(bulge),
});

/** Makes exact rings of the lines that the kernel has found. */
function placingOn(edges: readonly Edge[]): (line: Outlining) => Ring {
  const runs = new Map<number, Run>();
  const runOf = (index: number): Run => {
    const run = runs.get(index) ?? runAlong(entry(edges, index));
    runs.set(index, run);
    return run;
  };
  const places = new Map<Node, Vector>();
  const placeOf = (node: Node): Vector => {
    const place = places.get(node) ?? placed(node);
    places.set(node, place);
    return place;
  };
  function placed({ x, y, start, crossing }: Node): Vector {
    const given = start === undefined ? undefined : edges[start]?.from;
    const near = { x: readNumber(x), y: readNumber(y) };
    const [one, other] = crossing?.map(runOf) ?? [];
    const met = one && other && meeting(one, other, near);
    const isStraight = one !== undefined && other !== undefined && !isArc(one) && !isArc(other);
    return given ?? (met && settled(met, !isStraight)) ?? near;
  }
  return (line) => {
    const points = line.map(({ node }) => placeOf(node));
    const bulges = line.map(({ edge }, index) => {
      const [start, end] = [points[index], points[(index + 1) % points.length]];
      const own = edges[edge];
      if (own?.bulge === undefined || start === undefined || end === undefined) return undefined;
      return bulgeOf(own, runOf(edge), [start, end]);
    });
    return tidy({ points, bulges });
  };
}

const isArc = (run: Run): run is Circle => 'centre' in run;

/** The line or the circle of an edge. */
function runAlong({ from, to, bulge }: Edge): Run {
  const along = minus(to, from);
  if (bulge === undefined) return { point: from, along };
  const { radius, chord } = arcOf(from, to, bulge);
  const isRight = signOfRatio(bulge) > 0;
  const right = { x: along.y, y: subtractRatios(ZERO, along.x) };
  // from the middle of the chord: the bulge less the radius, to the right
  const toCentre = subtractRatios(bulge, isRight ? radius : subtractRatios(ZERO, radius));
  const middle = scaled(plus(from, to), HALF_RATIO);
  const centre = plus(middle, scaled(right, divideRatios(toCentre, chord)));
  return { centre: settled(centre, true), radius: to40Digits(radius) };
}

/** The middle ordinate of the rest of an arc. */
function bulgeOf(
  edge: Edge,
  run: Run | undefined,
  [start, end]: readonly [Vector, Vector],
): Ratio | undefined {
  const isWhole = isZero(minus(start, edge.from)) && isZero(minus(end, edge.to));
  if (isWhole || edge.bulge === undefined || run === undefined || !isArc(run)) return edge.bulge;
  const isRight = signOfRatio(edge.bulge) > 0;
  return to40Digits(bulgeBetween({ ...run, isRight, isOut: isRight }, start, end));
}

/** Removes corners between straight edges in one line. */
function tidy({ points, bulges = [] }: Ring): Ring {
  const isCorner = points.map((point, index) => {
    const before = known(points.at(index - 1), 'such entry');
    const after = entry(points, (index + 1) % points.length);
    if (bulges[index] !== undefined || bulges.at(index - 1) !== undefined) return true;
    return signOfRatio(cross(minus(point, before), minus(after, point))) !== 0;
  });
  const kept = bulges.filter((_, index) => isCorner[index] === true);
  const corners = points.filter((_, index) => isCorner[index] === true);
  if (kept.every((bulge) => bulge === undefined)) return { points: corners };
  return { points: corners, bulges: kept };
}

/** Halves arcs if long ones make the chords run the wrong way round. */
function legible(ring: Ring, isHole: boolean): Ring {
  let made = ring;
  for (let round = 0; round < MOST_ROUNDS && !isOutwardRight(made, isHole); round += 1) {
    made = halved(made);
  }
  return made;
}

const MOST_ROUNDS = 4;
