import { chordsOf } from '../../../outline/chords.js';
import { contains } from '../../../outline/contains.js';
import type { Outline, Ring } from '../../../outline/ring.js';
import { exactOf } from '../../../units/quantity.js';
import type { Ratio } from '../../../units/ratio.js';
import { between, type PlanPoint } from '../../../units/vector.js';
import { NO_LENGTH } from '../../../units/zero.js';
import type { DigRing, PavementPlan } from '../plan.js';

/** The outlines of a dig. Internal. */
export interface DigRings {
  readonly outer: DigRing;
  /** Islands left in the dig. */
  readonly holes: readonly DigRing[];
}

/** A dig as an outline, relative to its first corner. Internal. */
export function digOutline({ outer, holes }: DigRings): Outline {
  const origin = outer.points[0] ?? { x: NO_LENGTH, y: NO_LENGTH };
  return {
    origin,
    ...ringFrom(origin, outer),
    holes: holes.map((hole) => ringFrom(origin, hole)),
  };
}

function ringFrom(origin: PlanPoint, { points, arcs }: DigRing): Ring {
  const corners = points.map((point) => between(origin, point));
  if (arcs.length === 0) return { points: corners };
  const bulges = points.map((): Ratio | undefined => undefined);
  for (const { edge, bulgeMiddleOrdinate } of arcs) bulges[edge] = exactOf(bulgeMiddleOrdinate);
  return { points: corners, bulges };
}

/** Makes a test for points in the dig of a pavement, outside its islands. Internal. */
export function digOf({
  digOutline: points,
  digArcs: arcs,
  digHoles,
}: PavementPlan): (place: PlanPoint) => boolean {
  return insideOf(digOutline({ outer: { points, arcs }, holes: digHoles }));
}

/** Makes a test for points in an outline, outside its holes. Internal. */
export function insideOf({ origin, holes, ...ring }: Outline): (place: PlanPoint) => boolean {
  const outer = chordsOf(ring, false).points;
  const islands = holes.map((hole) => chordsOf(hole, true).points);
  return (place) => {
    const at = between(origin, place);
    return contains(outer, at) && !islands.some((island) => contains(island, at));
  };
}
