import type { PlanPoint } from '../units/vector.js';
import type { Outline } from './ring.js';
import { arcsOf, placesOf, type WidenedArc, type WidenedHole } from './widen-outline.js';

/**
 * An outline made by combining others. You can pass it in as an outline again, unless it touches itself
 * at a corner, or an arc leaves a corner so close to the next edge that the chords of the check cross
 * that edge (1/20 000 of the radius).
 */
export interface CombinedOutline {
  /** Its corners in order, counter-clockwise. */
  readonly points: readonly PlanPoint[];
  /** Its edges that are arcs. */
  readonly arcs: readonly WidenedArc[];
  /** Gaps that it encloses, and holes that remain. */
  readonly holes: readonly WidenedHole[];
}

/** Converts an internal outline for a result. Internal. */
export const combinedOutline = (outline: Outline): CombinedOutline => ({
  points: placesOf(outline, outline),
  arcs: arcsOf(outline),
  holes: outline.holes.map((hole) => ({ points: placesOf(outline, hole), arcs: arcsOf(hole) })),
});
