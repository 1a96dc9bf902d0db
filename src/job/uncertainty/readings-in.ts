import type { FieldPath } from '../../errors.js';
import { isQuantity, type Length } from '../../units/quantity.js';
import type { JobInput } from '../schema/job-input.js';

/** What a reading was taken with. Internal. */
export type ReadingKind = 'tape' | 'rod' | 'string';

/** A reading of a job. Internal. */
export interface Reading {
  readonly path: FieldPath;
  readonly kind: ReadingKind;
}

/** Fields that hold readings; `*` is any index. */
const READINGS: readonly (readonly [path: string, kind: ReadingKind])[] = [
  ['stringHeight', 'string'],
  ['stringLines.*.height', 'string'],
  ['stakes.*.ground', 'string'],
  ['stakes.*.x', 'tape'],
  ['stakes.*.y', 'tape'],
  ['stakes.*.finish', 'rod'],
  ['existingLevels.*.z', 'rod'],
  ['pavements.*.existingAboveFinish', 'rod'],
  ['levelBook.rows.*.back', 'rod'],
  ['levelBook.rows.*.intermediate', 'rod'],
  ['levelBook.rows.*.fore', 'rod'],
];

/** The readings that a job as a plan carries it holds. Internal. */
export const readingsIn = (job: JobInput): readonly Reading[] =>
  READINGS.flatMap(([pattern, kind]) =>
    pathsOf(job, pattern.split('.')).map((path) => ({ path, kind })),
  );

function pathsOf(value: unknown, keys: readonly string[], path: FieldPath = []): FieldPath[] {
  const [key, ...rest] = keys;
  if (key === undefined) return isQuantity(value) ? [path] : [];
  if (key === '*') {
    if (!Array.isArray(value)) return [];
    return value.flatMap((part, index) => pathsOf(part, rest, [...path, index]));
  }
  if (typeof value !== 'object' || value === null) return [];
  return pathsOf((value as Record<string, unknown>)[key], rest, [...path, key]);
}

/** The job with one reading changed. Internal. */
export const movedBy = (job: JobInput, { path }: Reading, by: Length): JobInput =>
  changed(job, path, by) as JobInput;

function changed(value: unknown, path: FieldPath, by: Length): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return (value as Length).plus(by);
  if (Array.isArray(value)) {
    return value.map((part: unknown, index) => (index === key ? changed(part, rest, by) : part));
  }
  const holder = value as Record<string, unknown>;
  return { ...holder, [key]: changed(holder[key], rest, by) };
}
