import type { FieldPath } from '../../../errors.js';
import { ringsOf, type Outline } from '../../../outline/ring.js';
import { widen, type WidenedOutline } from '../../../outline/widen-outline.js';
import type { Area, Length, Volume } from '../../../units/quantity.js';
import { slopedVolume } from '../../../volumes/sloped-volume.js';
import type { PlannedEdge } from '../plan-edges.js';

/** A base whose stone tapers beyond the restraint. Internal. */
export interface TaperedBase {
  readonly paving: Outline;
  readonly edges: readonly PlannedEdge[];
  /** Width of the restraint; the stone is level under it. */
  readonly restraint: Length;
  /** Total thickness of the stone. */
  readonly thickness: Length;
  readonly path: FieldPath;
}

/**
 * The volume by which a layer of a tapered base is short of full thickness. The stone slopes straight
 * from its top at the restraint to its foot at the outer edge of the base. Internal.
 */
export function taperedOff(
  { paving, edges, restraint, thickness, path }: TaperedBase,
  { from, to }: { readonly from: Length; readonly to: Length },
): Volume {
  const outAt = (edge: PlannedEdge, height: Length): Length => {
    if (edge.base.compare(restraint) <= 0) return edge.base;
    return edge.base.minus(edge.base.minus(restraint).times(height).dividedBy(thickness));
  };
  const at = (height: Length): WidenedOutline =>
    widen(
      paving,
      edges.map((edge) => outAt(edge, height)),
      path,
    );
  const [bottom, whole]: [Area, Area] = [at(from).area, areaAtFoot(paving, edges, path)];
  const { volume } = slopedVolume({
    bottom,
    depth: to.minus(from),
    at: (height) => at(from.plus(height)),
    hasArcs: ringsOf(paving).some(({ bulges }) => bulges !== undefined),
  });
  return whole.times(to.minus(from)).minus(volume);
}

const areaAtFoot = (paving: Outline, edges: readonly PlannedEdge[], path: FieldPath): Area =>
  widen(
    paving,
    edges.map(({ base }) => base),
    path,
  ).area;
