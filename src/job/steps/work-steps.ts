import { deepFreeze } from '../../working.js';
import { materialList } from '../order/material-list.js';
import type { JobPlan, PavementPlan } from '../plan/plan.js';
import { jobOfPlan } from '../saved/job-of-plan.js';
import { requirePlan } from '../require-plan.js';
import { markStep, type WorkStep } from './work-step.js';
import { checkBase, layGeotextile, placeLifts, setRestraint } from './base-steps.js';
import { loadCounter } from './count-loads.js';
import { checkSubgrade, dig, fillLowGround, stripOldPaving } from './dig-steps.js';
import {
  compactPavers,
  cutPavers,
  fillJoints,
  handOver,
  layBorder,
  layPavers,
  screedBedding,
} from './paving-steps.js';
import { locateLines, markDig, setStrings } from './site-steps.js';
import type { StepBasis } from './step-basis.js';

type Phase = (basis: StepBasis, pavement: PavementPlan) => WorkStep | readonly WorkStep[];

/** What is done on every pavement, in the order of the work. */
const PHASES: readonly Phase[] = [
  markDig,
  stripOldPaving,
  dig,
  fillLowGround,
  checkSubgrade,
  layGeotextile,
  placeLifts,
  checkBase,
  setRestraint,
  screedBedding,
  layPavers,
  layBorder,
  cutPavers,
  compactPavers,
  fillJoints,
  handOver,
];

/**
 * The steps of work of a planned job, from locating lines to joint sand: what must be true before each
 * starts, heights to work to, what is hauled away or placed and from which line of the order list,
 * loads, hours by the `rates` of the job, and what someone must sign. Phase by phase over all
 * pavements; each step names the step it waits for. Orders, spoil and loads of all steps add up to the
 * totals of the plan.
 *
 * Hours of the machine leave out what is dug by hand in the zones of marked lines, and trimming.
 * Stone is shared out evenly over the lifts of its layer. Notes on method are common practice, no
 * source.
 *
 * @param plan - from `planJob` or `planFromJSON`; not changed
 * @returns a frozen list; `describeWorkStep` puts a step into words
 * @throws `PLAN_INVALID` if it is not a plan; `DIVISION_BY_ZERO`, `NOT_POSITIVE` or `CAPACITY_EXCEEDED` for a plan
 *   that was not worked out from its job, with a load, a pack or a rate of nothing
 * @source derived
 * @example
 * const steps = workSteps(planJob(job));
 * steps.slice(0, 4).map(({ id }) => id)
 * //=> ['locate-lines', 'set-strings', 'mark-dig/court', 'mark-dig/terrace']
 * steps.find(({ id }) => id === 'lift-2/court')?.before.map(({ note }) => note)
 * //=> ['"Lift 1, sub-base (Parking court)" is done.', 'The check of the surface below passes at every stake: lift 1 top.']
 */
export function workSteps(plan: JobPlan): readonly WorkStep[] {
  requirePlan(plan);
  const basis: StepBasis = {
    plan,
    job: jobOfPlan(plan),
    list: materialList(plan),
    countLoads: loadCounter(),
    last: new Map(),
  };
  const ofSite = [locateLines(basis), setStrings(basis)];
  const ofPavements = PHASES.flatMap((phase) =>
    plan.pavements.flatMap((pavement) => phase(basis, pavement)),
  );
  return deepFreeze([...ofSite, ...ofPavements].map(markStep));
}
