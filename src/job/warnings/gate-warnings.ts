import { excavationGates, type ReachedGate } from '../../site/excavation/excavation-gates.js';
import { DEPTH_GATES, EXCAVATION_DISTANCES } from '../../sources/excavation-rules.js';
import { referenceQuantity } from '../../reference-quantity.js';
import { max } from '../../units/aggregate.js';
import type { Length } from '../../units/quantity.js';
import type { LaidOut } from '../plan/lay-out.js';
import type { PavementPlan, PlanWarning } from '../plan/plan.js';
import type { ReadJob } from '../schema/job-shape.js';
import { warning } from './warning.js';

/**
 * Rules that the depth of an open dig brings, and spoil that is said to lie too near. What always holds
 * stays on the sheet alone. Where no soil is given, the depths count all the same. Internal.
 */
export function gateWarnings(job: ReadJob, laid: LaidOut, plan: PavementPlan): PlanWarning[] {
  const depth = deepestOf(laid, plan);
  const reached = plan.nearby.gates?.gates ?? unasked(depth);
  const rules = reached
    .filter(({ id }) => Object.hasOwn(DEPTH_GATES, id))
    .map(({ id }) => warning('DIG_RULE', plan.name, { rule: id, depth }));
  return [...rules, ...spoilWarnings(job, plan)];
}

function spoilWarnings({ excavation }: ReadJob, { name, nearby }: PavementPlan): PlanWarning[] {
  const distance = excavation?.spoilDistance;
  const least = referenceQuantity('length', EXCAVATION_DISTANCES.spoilSetBack);
  if (nearby.gates === null || distance === undefined || distance.compare(least) >= 0) return [];
  return [warning('SPOIL_TOO_NEAR', name, { distance, least })];
}

/** The deepest dig that is known: rules go by it, not by the mean. */
const deepestOf = ({ measured }: LaidOut, { dig, earth }: PavementPlan): Length =>
  max([
    dig.depth,
    ...measured.flatMap((line) => line.flatMap((stake) => stake.dig ?? [])),
    ...(earth.deepestCut === null ? [] : [earth.deepestCut.depth]),
  ]);

function unasked(depth: Length): readonly ReachedGate[] {
  const first = referenceQuantity('length', DEPTH_GATES.egress.depth);
  if (depth.compare(first) < 0) return [];
  return excavationGates({ depth, soil: 'not-classified' }).gates;
}
