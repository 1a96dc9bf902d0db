import { fault, pathText, type FieldPath } from '../../errors.js';
import type { StepItem } from '../../working.js';
import { deepFreeze } from '../../working.js';
import type { JobPlan, PlanStep } from '../plan/plan.js';
import { requirePlan } from '../require-plan.js';
import { copyOf } from './copy-of.js';
import type { Explanation } from './explanation.js';
import { fieldAt } from './field-at.js';
import { isSame, itemsOf } from './same-value.js';
import { stepsOf, type StepsOfPlan } from './steps-of-plan.js';

/**
 * Where a value of a plan comes from: the step of working that gives it, the steps before that one,
 * and at the ends the fields of the job and the published figures. Steps are found by the fields that
 * they give and take, not by their values.
 *
 * @param plan - from `planJob` or `planFromJSON`; not changed
 * @param path - the field of the plan, such as `['pavements', 0, 'dig', 'soil']`
 * @returns the origin of the value, with that of everything that went into it
 * @throws `PLAN_INVALID` if it is not a plan, `WRONG_TYPE` if it is not a path, `UNKNOWN_FIELD` where
 *   the plan has no such value, `NOT_EXPLAINED` for a value that no step gives, such as a word, and for
 *   what `readPlan` has read without its working
 * @source derived
 * @example
 * const soil = explain(planJob(job), ['pavements', 0, 'dig', 'soil']);
 * soil.origin === 'step' ? soil.step.title : '' //=> 'Soil to dig after stripping the old surface'
 * soil.origin === 'step' ? soil.from.map(({ origin }) => origin) : [] //=> ['step', 'step']
 */
export function explain(plan: JobPlan, path: FieldPath): Explanation {
  requirePlan(plan);
  const value = fieldAt(plan, path);
  const origin = originOfField({ plan, steps: stepsOf(plan) }, path, value);
  if (origin === null) {
    const words = `no step of the working gives ${pathText(path)}`;
    throw fault('NOT_EXPLAINED', words, {}, [...path]);
  }
  return deepFreeze(origin);
}

interface Known {
  readonly plan: JobPlan;
  readonly steps: StepsOfPlan;
}

/** The origin of a field of the plan; null where it has none. */
function originOfField(known: Known, path: FieldPath, value: StepItem): Explanation | null {
  const name = String([...path].reverse().find((key) => typeof key === 'string'));
  if (path[0] === 'job') return { origin: 'job', name, value, path: path.slice(1) };
  const given = known.steps.giving(path);
  if (given !== null) return explained(known, given.step, given.index, value);
  const copy = copyOf(known.plan, path);
  if (copy === null) return isNothing(value) ? { origin: 'stated', name, value } : null;
  return originOfField(known, copy, value);
}

/** True for a zero: nothing there to be worked out. */
const isNothing = (value: StepItem): boolean =>
  typeof value === 'object' ? value.isZero() : value === 0;

function explained(known: Known, step: PlanStep, index: number, value: StepItem): Explanation {
  const { name } = step.result;
  const from = step.given.flatMap((input) => {
    const items = itemsOf(input.value);
    return items.map((item, place): Explanation => {
      const path = step.takes[input.symbol]?.[place];
      const field = path === undefined ? null : originOfField(known, path, item);
      const own = { name: input.name, value: item };
      if (field !== null) return field;
      if (input.source !== null) return { origin: 'published', ...own, source: input.source };
      const earlier = stepBefore(known, { step, index }, { ...own, place, of: items.length });
      return earlier === null
        ? { origin: 'stated', ...own }
        : explained(known, earlier.step, earlier.index, item);
    });
  });
  return { origin: 'step', name, value, step, from };
}

interface Found {
  readonly step: PlanStep;
  readonly index: number;
}

interface Sought {
  readonly name: string;
  readonly value: StepItem;
  /** Its place in the list that it is given in. */
  readonly place: number;
  /** Length of that list. */
  readonly of: number;
}

/**
 * The step on the way that gives an input: one before, about the same part, whose result has the same
 * name and value. Steps that give the values of a list one by one give them in its order.
 */
function stepBefore({ plan, steps }: Known, { step, index }: Found, sought: Sought): Found | null {
  const { name, value, place, of } = sought;
  const named = steps.named(name).flatMap((at): Found[] => {
    const one = plan.working[at];
    const isEarlier = one !== undefined && at < index && pathText(one.part) === pathText(step.part);
    return isEarlier ? [{ step: one, index: at }] : [];
  });
  const gives = (one: Found | undefined): one is Found =>
    one !== undefined && itemsOf(one.step.result.value).some((item) => isSame(value, item));
  const inOrder = named.length === of ? named[place] : undefined;
  if (gives(inOrder)) return inOrder;
  return [...named].reverse().find(gives) ?? null;
}
