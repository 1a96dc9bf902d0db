import type { FieldPath, Issue } from 'settline';
import { tryPlanJob } from 'settline/job';

type Node = Record<string | number, unknown>;

const isNode = (value: unknown): value is Node => typeof value === 'object' && value !== null;

/** The path of every value in a file, from the outside in. */
export function pathsIn(value: unknown, path: FieldPath = []): FieldPath[] {
  if (!isNode(value)) return [path];
  const steps = Array.isArray(value) ? [...value.keys()] : Object.keys(value);
  return [path, ...steps.flatMap((step) => pathsIn(value[step], [...path, step]))];
}

/** The value at a path; undefined for none. */
export const valueAt = (file: unknown, path: FieldPath): unknown =>
  path.reduce<unknown>((value, step) => (isNode(value) ? value[step] : undefined), file);

/** Changes the object or list that holds the last step of a path; lists keep their length. */
export function edit(
  file: unknown,
  path: FieldPath,
  change: (holder: Node, step: string | number) => void,
): void {
  const [holder, step] = [valueAt(file, path.slice(0, -1)), path.at(-1)];
  if (isNode(holder) && step !== undefined) change(holder, step);
}

/** Writes a key with its last letter twice. */
export function misspell(holder: Node, step: string | number): void {
  const key = String(step);
  holder[`${key}${key.at(-1)}`] = holder[key];
  Reflect.deleteProperty(holder, key);
}

/** The faults of a job file; anything thrown but a fault goes through. */
export function faultsOfFile(file: unknown): readonly Issue[] {
  const outcome = tryPlanJob(file);
  return outcome.ok ? [] : outcome.errors;
}

/**
 * True for a path that a file has, or that names a key missing from an object, or the gap in a list,
 * that it has.
 */
export function isInFile(file: unknown, path: FieldPath): boolean {
  const step = path.at(-1);
  if (step === undefined) return true;
  const holder = valueAt(file, path.slice(0, -1));
  if (Array.isArray(holder)) return typeof step === 'number' && step < holder.length;
  return isNode(holder) && typeof step === 'string';
}
