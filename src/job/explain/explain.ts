import { fault, pathText, type FieldPath } from '../../errors.js';
import type { StepInput, StepItem } from '../../working.js';
import { deepFreeze } from '../../working.js';
import type { JobPlan, PlanStep } from '../plan/plan.js';
import { requirePlan } from '../require-plan.js';
import type { Explanation } from './explanation.js';
import { fieldAt } from './field-at.js';
import { jobFieldOf } from './job-field.js';
import { isSame, itemsOf } from './same-value.js';

/**
 * Where a value of a plan comes from: the step of working that gives it, the steps before that one,
 * and at the ends the fields of the job and the published figures.
 *
 * @param plan - from `planJob` or `planFromJSON`; not changed
 * @param path - the field of the plan, such as `['pavements', 0, 'dig', 'soil']`
 * @returns the origin of the value, with that of everything that went into it
 * @throws `PLAN_INVALID` for what is no plan, `WRONG_TYPE` for what is no path, `UNKNOWN_FIELD` where
 *   the plan has no such value, `NOT_EXPLAINED` for a value that no step gives, such as a point of an
 *   outline
 * @source derived
 * @example
 * const soil = explain(planJob(job), ['pavements', 0, 'dig', 'soil']);
 * soil.origin === 'step' ? soil.step.title : '' //=> 'Soil left once the old surface is stripped'
 * soil.origin === 'step' ? soil.from.map(({ origin }) => origin) : [] //=> ['step', 'step']
 */
export function explain(plan: JobPlan, path: FieldPath): Explanation {
  requirePlan(plan);
  const value = fieldAt(plan, path);
  const subject = subjectOf(plan, path);
  const name = String([...path].reverse().find((key) => typeof key === 'string'));
  const origin = originOf(plan, { value, subject, name, before: plan.working.length });
  if (origin === null) {
    const words = `no step of the working gives ${pathText(path)}`;
    throw fault('NOT_EXPLAINED', words, {}, [...path]);
  }
  return deepFreeze(origin);
}

/** The part of the job that a field is about, as the working names it. */
function subjectOf({ pavements, stringLines }: JobPlan, [list, index]: FieldPath): string {
  if (list === 'pavements') return pavements[Number(index)]?.name ?? '';
  if (list === 'stringLines') return `String ${stringLines[Number(index)]?.id}`;
  return list === 'totals' ? 'Loads' : 'Levels';
}

interface Sought {
  readonly value: StepItem;
  readonly name: string;
  readonly subject: string;
  /** Only steps before this one: a value does not come from what is worked out with it. */
  readonly before: number;
}

function originOf(plan: JobPlan, sought: Sought): Explanation | null {
  const { value, name, subject } = sought;
  const at = stepWith(plan, sought);
  const step = at === null ? undefined : plan.working[at];
  if (at !== null && step !== undefined) {
    const from = step.given.flatMap((input) => originsOf(plan, input, step, at));
    return { origin: 'step', name: step.result.name, value, step, from };
  }
  const path = jobFieldOf(plan, value, subject);
  return path === null ? null : { origin: 'job', name, value, path };
}

/** The origin of an input of a step; of each value, where it is a list. */
function originsOf(
  plan: JobPlan,
  { name, value, source }: StepInput,
  { subject }: PlanStep,
  before: number,
): Explanation[] {
  return itemsOf(value).map((item) => {
    if (source !== null) return { origin: 'published', name, value: item, source };
    return (
      originOf(plan, { value: item, name, subject, before }) ?? {
        origin: 'stated',
        name,
        value: item,
      }
    );
  });
}

/**
 * The number of the step that gives a value: of steps that give the same, one about the same part of
 * the job and of the same name comes first, then the nearest before.
 */
function stepWith({ working }: JobPlan, { value, name, subject, before }: Sought): number | null {
  let [best, most] = [-1, -1];
  working.slice(0, before).forEach((step, index) => {
    if (!itemsOf(step.result.value).some((item) => isSame(value, item))) return;
    const rank = (step.subject === subject ? 2 : 0) + (step.result.name === name ? 1 : 0);
    if (rank >= most) [best, most] = [index, rank];
  });
  return best < 0 ? null : best;
}
