import { listed } from '../../listed.js';
import type { PlanWarning } from '../../plan/plan.js';

/** Warnings of one code and equal values, with everything they are about. Internal. */
export interface WarningGroup {
  /** The first of them. */
  readonly warning: PlanWarning;
  /** What the others are about. */
  readonly others: readonly string[];
}

/** Groups warnings that differ in what they are about and in nothing else. Internal. */
export function groupWarnings(warnings: readonly PlanWarning[]): WarningGroup[] {
  const groups = new Map<string, { warning: PlanWarning; others: string[] }>();
  for (const warning of warnings) {
    const key = JSON.stringify([warning.code, sortedValues(warning)]);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { warning, others: [] });
    else if (!isNamed(group, warning.subject)) group.others.push(warning.subject);
  }
  return [...groups.values()];
}

const sortedValues = ({ values }: PlanWarning) =>
  Object.entries(values).sort(([a], [b]) => (a < b ? -1 : 1));

const isNamed = ({ warning, others }: WarningGroup, subject: string): boolean =>
  warning.subject === subject || others.includes(subject);

/** What the others of a group are about, in words: `stakes B2, B3 and B4`. Internal. */
export function subjectsText(subjects: readonly string[]): string {
  const stakes = subjects.filter((subject) => subject.startsWith('stake '));
  if (stakes.length !== subjects.length || stakes.length < 2) return listed(subjects);
  return `stakes ${listed(stakes.map((subject) => subject.slice('stake '.length)))}`;
}
