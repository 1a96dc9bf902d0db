import { chordsOf } from '../../outline/chords.js';
import { contains } from '../../outline/contains.js';
import type { Ring } from '../../outline/ring.js';
import { exactOf } from '../../units/quantity.js';
import { ratioToNumber, type Ratio } from '../../units/ratio.js';
import type { PlanPoint, Vector } from '../../units/vector.js';
import type { DigRing, PavementPlan } from './plan.js';

const vector = ({ x, y }: PlanPoint): Vector => ({ x: exactOf(x), y: exactOf(y) });

function ringOf({ points, arcs }: DigRing): Ring {
  if (arcs.length === 0) return { points: points.map(vector) };
  const bulges = points.map((): Ratio | undefined => undefined);
  for (const { edge, bulgeMiddleOrdinate } of arcs) bulges[edge] = exactOf(bulgeMiddleOrdinate);
  return { points: points.map(vector), bulges };
}

/** The lines of a dig in metres, arcs in chords. Internal. */
export function digRings({
  outer,
  holes,
}: {
  readonly outer: DigRing;
  readonly holes: readonly DigRing[];
}): { readonly outer: Float64Array; readonly holes: readonly Float64Array[] } {
  const flat = (ring: DigRing, isHole: boolean): Float64Array => {
    const { points } = chordsOf(ringOf(ring), isHole);
    return Float64Array.from(points.flatMap(({ x, y }) => [ratioToNumber(x), ratioToNumber(y)]));
  };
  return { outer: flat(outer, false), holes: holes.map((hole) => flat(hole, true)) };
}

/** Tells whether a place lies in the dig of a pavement, its islands left out. Internal. */
export function digOf({
  digOutline,
  digArcs,
  digHoles,
}: PavementPlan): (place: PlanPoint) => boolean {
  const outer = chordsOf(ringOf({ points: digOutline, arcs: digArcs }), false).points;
  const holes = digHoles.map((hole) => chordsOf(ringOf(hole), true).points);
  return (place) => {
    const at = vector(place);
    return contains(outer, at) && !holes.some((hole) => contains(hole, at));
  };
}
