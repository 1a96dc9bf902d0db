import type { Outcome } from '../attempt.js';
import type { JobPlan } from '../job/plan/plan.js';
import { tryPlanJob } from '../job/plan-job.js';

/**
 * What a worker does with one job: plans it and returns the plan or its faults. The result goes
 * through `structuredClone` and `JSON.stringify`. For a queue or a pool of your own.
 *
 * @param job - a job of unknown origin
 * @returns the outcome, as `tryPlanJob` gives it
 * @example
 * const outcome = planInWorker(job);
 * structuredClone(outcome).ok //=> true
 */
export function planInWorker(job: unknown): Outcome<JobPlan> {
  return tryPlanJob(job);
}
