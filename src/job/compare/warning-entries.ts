import type { JobPlan, PlanWarning } from '../plan/plan.js';
import type { PlanEntry } from './plan-entry.js';

/** The warnings of a plan; those about the same thing are told apart by their words. Internal. */
export function warningEntries({ warnings }: JobPlan): PlanEntry[] {
  const seen = new Map<string, number>();
  return warnings.map((warning, index): PlanEntry => {
    const key = keyOf(warning);
    const count = seen.get(key) ?? 0;
    seen.set(key, count + 1);
    return {
      about: 'warning',
      subject: warning.subject,
      what: 'warning',
      printed: 'depth',
      path: ['warnings', index],
      key: `${key} ${count}`,
      owner: null,
      value: warning,
    };
  });
}

/** What a warning is about: its figures may differ. */
const keyOf = ({ code, subject, values }: PlanWarning): string =>
  JSON.stringify([
    code,
    subject,
    ...Object.entries(values).filter(([, value]) => typeof value === 'string'),
  ]);
