// A border is the outline moved inward; `outline` moves outlines.
import type { Outline } from '../outline/read-outline.js';
import { widen } from '../outline/widen-outline.js';
import { fault, isSettlineError } from '../errors.js';
import { fromSI, type Area, type Length } from '../units/quantity.js';
import {
  compareRatios,
  divideRatios,
  signOfRatio,
  subtractRatios,
  type Ratio,
} from '../units/ratio.js';
import { between, cross, dot, minus, norm, type PlanPoint, type Vector } from '../units/vector.js';

/** The border along one edge of the outline. */
export interface BorderSide {
  /** Index of the edge: edge k runs from point k to the next. */
  readonly edge: number;
  /** Along the middle of the course, from corner to corner. */
  readonly centreLine: Length;
  /** Along the longer side of the course: what mitred units have to reach. */
  readonly longSide: Length;
}

/** An outline whose edges were moved inward. Internal. */
export interface MovedRing {
  readonly ring: readonly PlanPoint[];
  readonly points: readonly Vector[];
  readonly area: Area;
  /** Start and end of each edge of the outline, once moved. */
  readonly ends: readonly (readonly [Vector, Vector])[];
}

/** Moves the edges of an outline inward, each by its own depth. Internal. */
export function moveIn(outline: Outline, depths: readonly Length[]): MovedRing {
  const { outline: ring, area } = tooDeepGuarded(() =>
    widen(
      outline,
      depths.map((depth) => depth.negated()),
      ['outline'],
    ),
  );
  const points = ring.map((point) => between(outline.origin, point));
  return { ring, points, area, ends: endsOf(outline.points, points, depths) };
}

/** What moving outward calls it when edges are swallowed or run into each other. */
const TOO_DEEP: ReadonlySet<string> = new Set(['EDGE_VANISHES', 'SELF_INTERSECTION']);

function tooDeepGuarded<T>(move: () => T): T {
  try {
    return move();
  } catch (error) {
    if (!isSettlineError(error) || !TOO_DEEP.has(error.code)) throw error;
    const { edge } = error.params;
    const where = edge === undefined ? '' : `at edge ${edge} `;
    throw fault(
      'BORDER_TOO_DEEP',
      `${where}the paving has no room for a border this deep: leave it out there, or take a shallower course`,
      error.params,
      ['outline'],
    );
  }
}

/** Where each edge starts and ends in a moved ring, which has a step where a straight edge changes. */
function endsOf(
  outline: readonly Vector[],
  ring: readonly Vector[],
  depths: readonly Length[],
): (readonly [Vector, Vector])[] {
  const count = outline.length;
  const at = (list: readonly Vector[], index: number) => list[index % list.length] ?? NOWHERE;
  let next = 0;
  const corners = outline.map((point, index) => {
    const before = minus(point, at(outline, index + count - 1));
    const after = minus(at(outline, index + 1), point);
    const isStraight = signOfRatio(cross(before, after)) === 0;
    const [d1, d2] = [depths[(index + count - 1) % count], depths[index]];
    const isStep = isStraight && d1 !== undefined && d2 !== undefined && !d1.equals(d2);
    const first = at(ring, next);
    next += isStep ? 2 : 1;
    return { ends: first, starts: at(ring, next - 1) };
  });
  return corners.map(({ starts }, index) => [starts, corners[(index + 1) % count]?.ends ?? starts]);
}

const NOWHERE: Vector = Object.freeze({ x: { n: 0, d: 1 }, y: { n: 0, d: 1 } });

type Ends = readonly (readonly [Vector, Vector])[];

/** The course along each edge, from the ends of its middle and of its inner edge. Internal. */
export function sidesOf(outline: readonly Vector[], middle: Ends, inner: Ends): BorderSide[] {
  return outline.map((from, edge) => {
    const to = outline[(edge + 1) % outline.length] ?? from;
    const along = minus(to, from);
    const size = norm(along);
    const station = (point: Vector) => divideRatios(dot(minus(point, from), along), size);
    const [a, b] = middle[edge] ?? [from, to];
    const [c, d] = inner[edge] ?? [from, to];
    const starts = lesser(station(from), station(c));
    const ends = greater(station(to), station(d));
    return {
      edge,
      centreLine: fromSI('length', subtractRatios(station(b), station(a))),
      longSide: fromSI('length', subtractRatios(ends, starts)),
    };
  });
}

const lesser = (a: Ratio, b: Ratio): Ratio => (compareRatios(a, b) < 0 ? a : b);
const greater = (a: Ratio, b: Ratio): Ratio => (compareRatios(a, b) > 0 ? a : b);
