import type { FieldPath } from '../errors.js';
import { shown } from '../input/shown.js';
import { isPart, isSameValue } from './is-same-value.js';
import type { JobPlan } from './plan/plan.js';

/** A part of a saved plan that its job does not give. Internal. */
export interface Difference {
  readonly path: FieldPath;
  /** What the job gives, in short. */
  readonly planned: string;
  /** What was saved. */
  readonly saved: string;
}

/**
 * What is not compared: the job is what the plan is made from, the words carry no figures, and the
 * rest says how the plan was read. The text of a value in the working has the unit it was written in,
 * which JSON does not keep; the value itself is compared.
 */
const ASIDE = new Set(['job', 'cautions', 'sources', 'libraryVersion', 'figures', 'altered']);

/** All parts in which a saved plan differs from the plan of its job; both have one form. Internal. */
export function differencesOf(plan: JobPlan, saved: JobPlan): readonly Difference[] {
  const found: Difference[] = [];
  for (const [key, part] of Object.entries(plan)) {
    if (!ASIDE.has(key)) compare(found, part, saved[key as keyof JobPlan], [key]);
  }
  if (saved.working.length > 0) compare(found, plan.working, saved.working, ['working']);
  return found;
}

function compare(found: Difference[], own: unknown, saved: unknown, path: FieldPath): void {
  if (isPart(own) && isPart(saved)) {
    if (Array.isArray(own) && Array.isArray(saved) && own.length !== saved.length) {
      found.push(differs(own.length, saved.length, [...path, 'length']));
      return;
    }
    for (const key of new Set([...Object.keys(own), ...Object.keys(saved)])) {
      if (key === 'text' && path[0] === 'working') continue;
      const step = Array.isArray(own) ? Number(key) : key;
      compare(found, own[key], saved[key], [...path, step]);
    }
    return;
  }
  if (!isSameValue(own, saved)) found.push(differs(own, saved, path));
}

const differs = (own: unknown, saved: unknown, path: FieldPath): Difference => ({
  path,
  planned: shown(own),
  saved: shown(saved),
});
