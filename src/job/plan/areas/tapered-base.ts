import type { FieldPath } from '../../../errors.js';
import { hasArcs, type Outline } from '../../../outline/ring.js';
import { widen, type WidenedOutline } from '../../../outline/widen-outline.js';
import type { Length, Volume } from '../../../units/quantity.js';
import { NO_LENGTH } from '../../../units/zero.js';
import { slopedVolume } from '../../../volumes/sloped-volume.js';
import { outlineOf } from '../lay-out.js';
import type { PlannedEdge } from '../plan-edges.js';
import { areaOfRegions, within, type SignedOutline } from './regions.js';

/** A base whose stone tapers beyond the restraint. Internal. */
export interface TaperedBase {
  readonly paving: Outline;
  readonly edges: readonly PlannedEdge[];
  /** The part of the base counted with this pavement. */
  readonly regions: readonly SignedOutline[];
  /** Width of the restraint; the stone is level under it. */
  readonly restraint: Length;
  /** Total thickness of the stone. */
  readonly thickness: Length;
  readonly path: FieldPath;
}

/**
 * The volume of a layer of a tapered base, less what is counted with others. The stone slopes straight
 * from its top at the restraint to its foot at the outer edge of the base. Internal.
 */
export function taperedVolume(
  { paving, edges, regions, restraint, thickness, path }: TaperedBase,
  { from, to }: { readonly from: Length; readonly to: Length },
): Volume {
  const outAt = (edge: PlannedEdge, height: Length): Length => {
    if (edge.base.compare(restraint) <= 0) return edge.base;
    return edge.base.minus(edge.base.minus(restraint).times(height).dividedBy(thickness));
  };
  const at = (height: Length): WidenedOutline => {
    const outward = edges.map((edge) => outAt(edge, from.plus(height)));
    const whole = widen(paving, outward, path);
    if (regions.length === 1) return whole;
    // sides that run into the base of another pavement do not narrow evenly
    return {
      ...whole,
      area: areaOfRegions(within(regions, outlineOf(whole))),
      closesUp: true,
    };
  };
  return slopedVolume({
    bottom: at(NO_LENGTH).area,
    depth: to.minus(from),
    at,
    hasArcs: hasArcs(paving),
  }).volume;
}
