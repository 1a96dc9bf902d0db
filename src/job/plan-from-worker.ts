import { tryPlanJob } from './plan-job.js';
import type { JobPlan } from './plan/plan.js';
import { markPlan } from './require-plan.js';
import { readSavedPlan } from './saved/read-saved-plan.js';
import { once } from '../once.js';
import { isQuantity } from '../units/quantity.js';
import { deepFreeze } from '../working.js';

/**
 * A plan that a worker of this program worked out and sent as data. Its figures are those of the
 * planner, so nothing is planned again, but for the working: that is made when first asked for, from
 * the job as it was given. Internal.
 *
 * @throws `PLAN_INVALID` if it is not a plan
 */
export function planFromWorker(data: unknown, job: unknown): JobPlan {
  const plan = readSavedPlan(data);
  const again = once((): unknown => {
    const outcome = tryPlanJob(job);
    return outcome.ok ? outcome.value : undefined;
  });
  hangWorkings(plan, again);
  return deepFreeze(markPlan(plan));
}

/** Hangs the working on every part that has one: that of the same part, planned again. */
function hangWorkings(part: unknown, again: () => unknown): void {
  if (typeof part !== 'object' || part === null || isQuantity(part)) return;
  if (Object.getOwnPropertyDescriptor(part, 'working')?.configurable === true) {
    const get = (): unknown => fieldOf(again(), 'working') ?? [];
    Object.defineProperty(part, 'working', { get, enumerable: false, configurable: false });
  }
  for (const name of Object.keys(part)) {
    hangWorkings(fieldOf(part, name), () => fieldOf(again(), name));
  }
}

const fieldOf = (part: unknown, name: string): unknown =>
  typeof part === 'object' && part !== null
    ? (part as Readonly<Record<string, unknown>>)[name]
    : undefined;
