import { isSettlineError, type FieldPath, type Issue } from '../../errors.js';
import { entry } from '../../invariant.js';
import { jobInvalid } from './read-job.js';

/**
 * Runs a calculation on parts of a job, and gives its faults the path of the part in the job. Internal.
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

/** Lists the fault of a shared part only once. */
function onceEach(issues: readonly Issue[]): Issue[] {
  const keys = issues.map(({ code, path }) => `${code} ${JSON.stringify(path)}`);
  return issues.filter((_, index) => keys.indexOf(entry(keys, index)) === index);
}
