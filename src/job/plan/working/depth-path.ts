import type { FieldPath } from '../../../errors.js';
import type { Length } from '../../../units/quantity.js';
import type { PavementPlan } from '../plan.js';

/** The field of a pavement's plan that holds a depth below finished grade. Internal. */
export function depthPath(
  { buildUp, lifts }: Pick<PavementPlan, 'buildUp' | 'lifts'>,
  depth: Length,
): FieldPath {
  if (depth.equals(buildUp.total)) return ['buildUp', 'total'];
  const layer = buildUp.layers.findIndex(({ top }) => top.equals(depth));
  if (layer >= 0) return ['buildUp', 'layers', layer, 'top'];
  return ['lifts', lifts.findIndex(({ belowFinish }) => belowFinish.equals(depth)), 'belowFinish'];
}
