import type { JobPlan } from '../plan/plan.js';
import { markPlan } from '../require-plan.js';
import { deepFreeze } from '../../working.js';
import { readSavedPlan } from './read-saved-plan.js';

/**
 * Reads a saved plan for printing, without planning its job again. It checks the form: every field, its
 * type, dimension and size, the cautions, and that the parts belong together. It believes the figures,
 * so the plan is marked `unchecked`, and its sheet says so at the top. Use `planFromJSON` wherever
 * the planner can be loaded.
 *
 * The working is not part of the JSON of a plan. To send it along, save
 * `{ ...plan, working: plan.working }`; without it, `working` is empty.
 *
 * @param json - a plan after `JSON.parse` or `structuredClone`; not changed
 * @returns the plan, frozen, with `figures` set to `unchecked`, or `altered` if it was saved so
 * @throws `PLAN_INVALID`: `issues` has the path of every fault, up to 100
 * @example
 * const plan = readPlan(JSON.parse(JSON.stringify(planJob(job))));
 * plan.figures //=> 'unchecked'
 * plan.pavements[0]?.buildUp.total.to('in').toString() //=> '18.75'
 */
export function readPlan(json: unknown): JobPlan {
  const plan = readSavedPlan(json);
  if (plan.figures !== 'altered') {
    plan.figures = 'unchecked';
    plan.altered = [];
  }
  return deepFreeze(markPlan(plan));
}
