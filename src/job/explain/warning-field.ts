import type { FieldPath } from '../../errors.js';
import { isQuantity } from '../../units/quantity.js';
import type { StepItem } from '../../working.js';
import type { JobPlan } from '../plan/plan.js';
import { isSame } from './same-value.js';

/**
 * The field that a figure of a warning repeats: in the part of the plan that the warning is about, or for a
 * limit the field that sets it. Null where it repeats none. Internal.
 */
export function warningField(plan: JobPlan, path: FieldPath): FieldPath | null {
  const [, index, values, key] = path;
  const warning = plan.warnings[Number(index)];
  const value = values === 'values' ? warning?.values[String(key)] : undefined;
  if (warning === undefined || value === undefined) return null;
  const own = partsOf(plan, warning.subject);
  for (const part of isLimit(String(key)) ? [...limitsOf(warning.code), ...own] : own) {
    const found = fieldWith(valueAt(plan, part), value, part);
    if (found !== null) return found;
  }
  return null;
}

/** True for a figure that the job asks for, not one that the plan works out. */
const isLimit = (key: string): boolean => /^(?:least|most|limit|minimum|maximum|inlet)/.test(key);

/** The parts of the job that set a limit. */
function limitsOf(code: string): FieldPath[] {
  if (code.startsWith('UTILITY')) return [['job', 'utilities']];
  if (code.startsWith('ROOTS')) return [['job', 'trees']];
  if (code.startsWith('RUNOFF')) return [['job', 'ground']];
  return [['minimumFall']];
}

/** The pavement or the strings that a warning is about. */
function partsOf({ pavements, stringLines }: JobPlan, subject: string): FieldPath[] {
  const own = pavements.flatMap(({ name, id }, k): FieldPath[] =>
    name === subject || id === subject
      ? [
          ['pavements', k, 'nearby'],
          ['pavements', k],
        ]
      : [],
  );
  const strings = stringLines.flatMap((line, k): FieldPath[] => {
    const isAbout = subject === `String ${line.id}` || subject === line.id;
    const hasStake = line.stakes.some(({ id }) => subject === `stake ${id}` || subject === id);
    return isAbout || hasStake ? [['stringLines', k]] : [];
  });
  return [...own, ...strings];
}

const valueAt = (plan: JobPlan, path: FieldPath): unknown =>
  path.reduce<unknown>(
    (value, key) => (value as Readonly<Record<string | number, unknown>>)[key],
    plan,
  );

function fieldWith(holder: unknown, value: StepItem, path: FieldPath): FieldPath | null {
  if (isSame(value, holder)) return path;
  if (typeof holder !== 'object' || holder === null || isQuantity(holder)) return null;
  for (const [key, part] of Object.entries(holder)) {
    const found = fieldWith(part, value, [...path, Array.isArray(holder) ? Number(key) : key]);
    if (found !== null) return found;
  }
  return null;
}
