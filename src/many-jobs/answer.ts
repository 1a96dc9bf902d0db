import type { Outcome } from '../attempt.js';
import { fault, type Issue } from '../errors.js';
import { isPlain } from '../input/plain.js';
import type { JobPlan } from '../job/plan/plan.js';
import { planFromWorker } from '../job/plan-from-worker.js';
import { tryPlanJob } from '../job/plan-job.js';
import type { JobWorkers } from './job-workers.js';

declare const structuredClone: (value: unknown) => unknown;

/** Has the workers plan a job; one that cannot be sent to them is planned here. Internal. */
export async function askWorkers(workers: JobWorkers, job: unknown): Promise<Outcome<JobPlan>> {
  // the caller may go on writing to the job
  const copy = attemptCopy(job);
  return copy === undefined ? tryPlanJob(job) : readAnswer(await workers.plan(copy.job), copy.job);
}

function attemptCopy(job: unknown): { readonly job: unknown } | undefined {
  try {
    return { job: structuredClone(job) };
  } catch {
    return undefined;
  }
}

function readAnswer(answer: unknown, job: unknown): Outcome<JobPlan> {
  if (isPlain(answer)) {
    const { ok, value, errors } = answer;
    if (ok === true) return { ok, value: planFromWorker(value, job) };
    if (ok === false && Array.isArray(errors)) return { ok, errors: errors as readonly Issue[] };
  }
  throw fault('WORKER_LOST', 'a worker returned something else than planInWorker() does');
}
