import type { FieldPath } from '../../../errors.js';
import { widen, type WidenedOutline } from '../../../outline/widen-outline.js';
import { hasArcs, type Outline } from '../../../outline/ring.js';
import type { Area, Length, Volume } from '../../../units/quantity.js';
import { NO_VOLUME } from '../../../units/zero.js';
import { slopedVolume } from '../../../volumes/sloped-volume.js';
import { topAt, type PlannedEdge } from '../plan-edges.js';
import type { DigTopPlan } from '../plan.js';

/** Volume that the sides add to a dig, and its top edge. Internal. */
export interface PlannedSides {
  readonly extra: Volume;
  readonly top: DigTopPlan | null;
}

/** Vertical sides all round. Internal. */
const UPRIGHT: PlannedSides = Object.freeze({ extra: NO_VOLUME, top: null });

/** Plans the sloped sides of a dig at its mean depth. Internal. */
export function planSides(
  paving: Outline,
  {
    edges,
    depth,
    bottom,
    path,
  }: {
    readonly edges: readonly PlannedEdge[];
    readonly depth: Length;
    readonly bottom: Area;
    readonly path: FieldPath;
  },
): PlannedSides {
  const isUpright = edges.every(({ batter }) => batter === null);
  if (isUpright || depth.isNegative() || depth.isZero()) return UPRIGHT;
  const at = (height: Length): WidenedOutline =>
    widen(
      paving,
      edges.map((edge) => topAt(edge, height)),
      path,
    );
  const { volume, top } = slopedVolume({ bottom, depth, at, hasArcs: hasArcs(paving) });
  const { outline: points, arcs, holes, area } = top;
  return {
    extra: volume.minus(bottom.times(depth)),
    top: { points, arcs, holes, area },
  };
}
