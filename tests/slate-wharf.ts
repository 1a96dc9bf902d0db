import { readJob, type JobInput } from 'settline/job';
import slateWharf from '../examples/slate-wharf.json' with { type: 'json' };
import type { LooseJob } from './loose-job.js';

/** The file of the site with everything that a job may carry; new for each caller. */
export const slateWharfFile = (): LooseJob => structuredClone(slateWharf);

/** The site with everything that a job may carry. */
export const slateWharfJob = (): JobInput => readJob(slateWharf);
