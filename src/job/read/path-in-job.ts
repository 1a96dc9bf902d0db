import type { FieldPath } from '../../errors.js';
import { isQuantity } from '../../units/quantity.js';
import type { ReadJob } from '../schema/job-shape.js';

/**
 * The part of a path that exists in the job. A fault of a calculation on parts of a job is shown at a
 * field of the job, never at a field of the calculation. Internal.
 */
export function pathInJob(job: ReadJob, path: FieldPath): FieldPath {
  let value: unknown = job;
  const known = path.findIndex((step) => {
    if (!hasField(value, step)) return true;
    value = value[step];
    return false;
  });
  return known < 0 ? path : path.slice(0, known);
}

/** True for a field of a part of the job, given or left out. A value read as a whole has no fields. */
const hasField = (
  value: unknown,
  step: string | number,
): value is Readonly<Record<string | number, unknown>> =>
  typeof value === 'object' &&
  value !== null &&
  !isQuantity(value) &&
  !('origin' in value) &&
  Object.hasOwn(value, step);
