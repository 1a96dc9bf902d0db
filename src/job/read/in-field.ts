import { isSettlineError, type FieldPath } from '../../errors.js';
import { jobInvalid } from './read-job.js';

/**
 * Runs a calculation on parts of a job; its faults come back with the path that the part has in the
 * job. Internal.
 *
 * @throws `JOB_INVALID`
 */
export function inField<T>(run: () => T, place: (path: FieldPath) => FieldPath): T {
  try {
    return run();
  } catch (error) {
    if (!isSettlineError(error)) throw error;
    throw jobInvalid(error.issues.map((issue) => ({ ...issue, path: place(issue.path) })));
  }
}
