import { fault, type FieldPath } from '../errors.js';
import { shownText } from '../input/shown.js';
import type { JobPlan, PavementPlan, StringLinePlan } from '../job/plan/plan.js';

/** The pavement with an id. Internal. */
export const pavementOf = ({ pavements }: JobPlan, id: string): PavementPlan =>
  found(pavements, id, 'pavement');

/** The string with an id. Internal. */
export const stringOf = ({ stringLines }: JobPlan, id: string): StringLinePlan =>
  found(stringLines, id, 'string');

function found<T extends { readonly id: string }>(
  all: readonly T[],
  id: string,
  field: 'pavement' | 'string',
): T {
  const one = all.find((each) => each.id === id);
  if (one !== undefined) return one;
  const known = all.map((each) => `"${shownText(each.id)}"`).join(', ');
  throw unknown(
    field,
    `the plan has no ${field} "${shownText(id)}". ${known === '' ? 'It has none' : `It has ${known}`}`,
  );
}

const unknown = (field: string, message: string) =>
  fault('UNKNOWN_ID', message, {}, [field] satisfies FieldPath);

/**
 * The string that a section hangs from: the one named, which must serve the pavement, else the first
 * that does; null where none does. Internal.
 */
export function stringForSection(
  plan: JobPlan,
  pavement: PavementPlan,
  id: string | undefined,
): StringLinePlan | null {
  if (id === undefined) {
    return plan.stringLines.find((line) => line.pavement === pavement.id) ?? null;
  }
  const line = stringOf(plan, id);
  if (line.pavement === pavement.id) return line;
  throw unknown(
    'string',
    `string "${shownText(id)}" serves "${shownText(line.pavement)}", not "${shownText(pavement.id)}"`,
  );
}
