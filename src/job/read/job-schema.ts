import * as z from 'zod/mini';
import { isSettlineError } from '../../errors.js';
import type { JobInput } from '../schema/job-input.js';
import { jobJsonSchema } from '../schema/json-schema.js';
import { readJob } from './read-job.js';

/**
 * The job as a schema of zod, for forms and routers that take one: it reads with {@link readJob}, and
 * each fault is an issue with its path, its words, and its code in `params`.
 */
export const jobSchema: z.ZodMiniType<JobInput, JobInput> = z.pipe(
  z.any().register(z.globalRegistry, jobJsonSchema()),
  z.transform((value: unknown, context): JobInput => {
    try {
      return readJob(value);
    } catch (error) {
      if (!isSettlineError(error)) throw error;
      for (const { code, message, params, path } of error.issues) {
        context.issues.push({
          code: 'custom',
          message,
          path: [...path],
          params: { code, params },
          input: value,
        });
      }
      return z.NEVER;
    }
  }),
);
