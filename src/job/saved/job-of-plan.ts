import { exactDecimal, ratioToNumber } from '../../units/ratio.js';
import { readWritten } from '../../units/read-number.js';
import type { JobPlan } from '../plan/plan.js';
import type { ReadJob } from '../schema/job-shape.js';
import { JOB_NUMBERS, WHOLE } from './job-numbers.js';
import { restored } from './restored.js';

const jobs = new WeakMap<JobPlan, ReadJob>();

/**
 * The job of a plan as it was read. A plan holds it in the plain form that `normalJob` writes; this
 * takes that form back, without reading a job file again. Internal.
 */
export function jobOfPlan(plan: JobPlan): ReadJob {
  const known = jobs.get(plan);
  if (known !== undefined) return known;
  const job = restored(plan.job, 'job', numberOf) as ReadJob;
  jobs.set(plan, job);
  return job;
}

function numberOf(value: string | number, name: string): unknown {
  if (!JOB_NUMBERS.has(name)) return value;
  const exact = readWritten(value);
  return WHOLE.has(name) ? ratioToNumber(exact) : exactDecimal(exact);
}
