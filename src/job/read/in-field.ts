import { isSettlineError, type FieldPath, type Issue } from '../../errors.js';
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
    throw jobInvalid(
      onceEach(error.issues.map((issue) => ({ ...issue, path: place(issue.path) }))),
    );
  }
}

/** What several parts share is at fault once. */
function onceEach(issues: readonly Issue[]): Issue[] {
  const keys = issues.map(({ code, path }) => `${code} ${JSON.stringify(path)}`);
  return issues.filter((_, index) => keys.indexOf(keys[index] ?? '') === index);
}
