import type * as z from 'zod/mini';
import type { JobInput } from '../schema/job-input.js';
import { jobJsonSchema } from '../schema/json-schema.js';
import { readJob } from './read-job.js';
import { zodSchema } from './zod-schema.js';

/**
 * A zod schema of the job, for forms and routers that take one. It reads with {@link readJob}. Each
 * fault is an issue with its path and message, and its code in `params`.
 */
export const jobSchema: z.ZodMiniType<JobInput, JobInput> = zodSchema(readJob, jobJsonSchema);
