import { entry } from '../invariant.js';
import type { PlanPoint, Vector } from '../units/vector.js';
import type { Ratio } from '../units/ratio.js';

/** A closed line of straight and arc edges; edge k runs from point k to the next. Internal. */
export interface Ring {
  readonly points: readonly Vector[];
  /**
   * For each edge its middle ordinate if it is an arc, + where it bulges outward from the paving;
   * left out if all edges are straight.
   */
  readonly bulges?: readonly (Ratio | undefined)[];
}

/** An outline that has been read and checked. Internal. */
export interface Outline extends Ring {
  /** The first point as given, the origin of all others, holes included. */
  readonly origin: PlanPoint;
  readonly holes: readonly Ring[];
}

/** The rings of an outline: the outer one first, then the holes. Internal. */
export const ringsOf = (outline: Outline): readonly Ring[] => [outline, ...outline.holes];

/** How many edges an outline has, those of its holes among them. Internal. */
export const edgeCount = (outline: Outline): number =>
  ringsOf(outline).reduce((sum, { points }) => sum + points.length, 0);

/** Iterates over the edges of a ring. Internal. */
export function forEachEdge(
  points: readonly Vector[],
  visit: (a: Vector, b: Vector, edge: number) => void,
): void {
  points.forEach((a, edge) => {
    visit(a, entry(points, (edge + 1) % points.length), edge);
  });
}

/** True for an outline with an arc edge, in its holes too. Internal. */
export const hasArcs = (outline: Outline): boolean =>
  ringsOf(outline).some(({ bulges }) => bulges !== undefined);
