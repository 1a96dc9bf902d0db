import { expect } from 'vitest';
import { tryPlanJob, type JobPlan } from 'settline/job';

/** Plans a job file that must be good. */
export function planFile(file: unknown): JobPlan {
  const outcome = tryPlanJob(file);
  if (!outcome.ok) expect.unreachable(JSON.stringify(outcome.errors));
  return outcome.value;
}
