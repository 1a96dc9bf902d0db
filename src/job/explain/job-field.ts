import type { FieldPath } from '../../errors.js';
import { isQuantity } from '../../units/quantity.js';
import type { StepItem } from '../../working.js';
import type { JobPlan } from '../plan/plan.js';
import { isSame } from './same-value.js';

/**
 * The field of the job that holds a value: in the part of the job that a step is about, else anywhere.
 * Null where no field does. Internal.
 */
export function jobFieldOf({ job }: JobPlan, value: StepItem, subject: string): FieldPath | null {
  const found = fieldsWith(job, value, []);
  return found.find((path) => isAbout(job, path, subject)) ?? found[0] ?? null;
}

function fieldsWith(holder: unknown, value: StepItem, path: FieldPath): FieldPath[] {
  if (isSame(value, holder) || isDigitsOf(value, holder)) return [path];
  if (typeof holder !== 'object' || holder === null || isQuantity(holder)) return [];
  return Object.entries(holder).flatMap(([key, part]) =>
    fieldsWith(part, value, [...path, Array.isArray(holder) ? Number(key) : key]),
  );
}

/** A job keeps numbers as digits. */
const isDigitsOf = (value: StepItem, field: unknown): boolean =>
  typeof value === 'number' && typeof field === 'string' && field !== '' && Number(field) === value;

/** True for a field of the pavement or string that the subject names. */
function isAbout(job: JobPlan['job'], [list, index]: FieldPath, subject: string): boolean {
  if (list === 'pavements') return job.pavements[Number(index)]?.name === subject;
  if (list === 'stringLines') return `String ${job.stringLines[Number(index)]?.id}` === subject;
  return false;
}
