import { deepFreeze } from '../../working.js';
import type { JobPlan } from '../plan/plan.js';
import { requirePlan } from '../require-plan.js';
import { markChange, type PlanChange } from './plan-change.js';
import { orderEntries } from './order-entries.js';
import { pavementEntries } from './pavement-entries.js';
import { isSameValue } from '../is-same-value.js';
import { differenceOf, type PlanEntry } from './plan-entry.js';
import { stringEntries } from './string-entries.js';
import { warningEntries } from './warning-entries.js';

/**
 * What differs between two plans of a job: depths, edges and areas of each pavement, depths below each
 * string, stakes, orders, loads and warnings. Pavements, strings and stakes are matched by id, layers
 * and surfaces by name, materials by id. What is in one plan only is said once, not field by field.
 * Differences of float noise are none.
 *
 * @param before - from `planJob` or `planFromJSON`; not changed
 * @param after - another plan of the job; not changed
 * @returns a frozen list: what the plan after has, in its order, then what was removed; empty for the
 *   same plans. `describeChange` puts a change into words
 * @throws `PLAN_INVALID` if it is not a plan
 * @source derived
 * @example
 * const truck = { ...job.truck, payload: '20 ton-us' };
 * const [first] = comparePlans(planJob(job), planJob({ ...job, truck }));
 * [first?.path.join('.'), first?.before, first?.after] //=> ['totals.stones.0.loads.count', 9, 7]
 */
export function comparePlans(before: JobPlan, after: JobPlan): readonly PlanChange[] {
  requirePlan(before);
  requirePlan(after);
  const [old, now] = [entriesOf(before), entriesOf(after)];
  const changes = [
    ...[...now.values()].flatMap((entry) => changeOf(old, entry)),
    ...[...old.values()]
      .filter((entry) => isMissed(now, entry))
      .map((entry) => changed('removed', entry, { before: entry.value, after: null })),
  ];
  return deepFreeze(changes.map(markChange));
}

type Entries = ReadonlyMap<string, PlanEntry>;

const entriesOf = (plan: JobPlan): Entries =>
  new Map(
    [pavementEntries, stringEntries, orderEntries, warningEntries]
      .flatMap((entries) => entries(plan))
      .map((entry) => [entry.key, entry]),
  );

/** True for what the other plan does not have, though it has what that belongs to. */
const isMissed = (others: Entries, { key, owner }: PlanEntry): boolean =>
  !others.has(key) && (owner === null || others.has(owner));

function changeOf(old: Entries, entry: PlanEntry): PlanChange[] {
  const was = old.get(entry.key);
  if (was === undefined) {
    return isMissed(old, entry)
      ? [changed('added', entry, { before: null, after: entry.value })]
      : [];
  }
  if (isSameValue(was.value, entry.value)) return [];
  return [changed('changed', entry, { before: was.value, after: entry.value })];
}

function changed(
  kind: PlanChange['kind'],
  { about, path, subject, what, printed }: PlanEntry,
  { before, after }: Pick<PlanChange, 'before' | 'after'>,
): PlanChange {
  const difference = differenceOf(before, after);
  return { kind, about, path, subject, what, printed, before, after, difference };
}
