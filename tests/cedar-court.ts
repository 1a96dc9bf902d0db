import { readJob, type JobInput } from 'settline/job';
import cedarCourt from '../examples/cedar-court.json' with { type: 'json' };
import type { LooseJob } from './loose-job.js';

/** The file of the built-in site in US units; new for each caller. */
export const cedarCourtFile = (): LooseJob => structuredClone(cedarCourt);

/** The built-in site in US units. */
export const cedarCourtJob = (): JobInput => readJob(cedarCourt);

/** The same, for the examples in the documentation. */
export const job: JobInput = cedarCourtJob();
