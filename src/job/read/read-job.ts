import { SettlineError, isSettlineError, type Issue } from '../../errors.js';
import { makeReader } from '../../input/reader.js';
import { readShape } from '../../input/shape.js';
import type { JobInput } from '../schema/job-input.js';
import { JOB, type ReadJob } from '../schema/job-shape.js';
import { crossChecks } from './cross-checks.js';
import { normalJob } from './normal-job.js';

/**
 * Reads a job of unknown origin, such as an imported JSON file. It checks the type and range of every
 * field, refuses unknown keys, and checks ids, edges and levels across the job. You get all faults at
 * once.
 *
 * @param job - the result of `JSON.parse`; not changed
 * @returns the typed job with every quantity read; `planJob` gives the same plan for it
 * @throws `JOB_INVALID`: every fault is in `issues` with its field path, code and message
 * @example
 * const text = '{ "version": 1, "name": "Mill Lane" }';
 * const outcome = attempt(() => readJob(JSON.parse(text)));
 * outcome.ok ? '' : outcome.errors[0]?.path.join('.') //=> 'stringHeight'
 */
export function readJob(job: unknown): JobInput {
  return normalJob(readWholeJob(job));
}

/**
 * Reads a job. Internal.
 *
 * @throws `JOB_INVALID` with every fault in `issues`
 */
export function readWholeJob(input: unknown): ReadJob {
  const reader = makeReader({ keepsParts: true });
  if (typeof input === 'string') {
    const message = 'expected a job object, got text. Pass the result of JSON.parse';
    reader.fail('WRONG_TYPE', [], message, { expected: 'an object { ... }' });
  }
  const job = reader.faults() > 0 ? {} : readShape(reader, input, [], JOB);
  if (reader.faults() === 0 || Object.keys(job).length > 0) crossChecks(reader, job, input);
  try {
    reader.finish();
  } catch (error) {
    if (isSettlineError(error)) throw jobInvalid(error.issues);
    throw error;
  }
  // if there is no fault, every field is present
  return job as ReadJob;
}

/** The error for a job with faults. Internal. */
export function jobInvalid(issues: readonly Issue[]): SettlineError {
  const [first, ...rest] = issues;
  const known = first ?? { path: [], code: 'JOB_INVALID', message: 'invalid', params: {} };
  return new SettlineError([known, ...rest], 'JOB_INVALID');
}
