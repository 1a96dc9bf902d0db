import type { FieldPath } from '../../errors.js';
import { onceForEach } from '../../once.js';
import type { JobPlan, PlanStep } from '../plan/plan.js';

/** The steps of a plan by what they give. Internal. */
export interface StepsOfPlan {
  /** The step that gives a field, with its number; null if none does. */
  readonly giving: (path: FieldPath) => { readonly step: PlanStep; readonly index: number } | null;
  /** The numbers of the steps whose result has a name, in order. */
  readonly named: (name: string) => readonly number[];
}

const known = new WeakMap<JobPlan, StepsOfPlan>();

/** Looks up the steps of a plan. Internal. */
export function stepsOf(plan: JobPlan): StepsOfPlan {
  const found = known.get(plan) ?? indexed(plan);
  known.set(plan, found);
  return found;
}

const keyOf = (path: FieldPath): string => JSON.stringify(path);

function indexed({ working }: JobPlan): StepsOfPlan {
  const byPath = new Map<string, number>();
  const byName = onceForEach<string, number[]>(() => []);
  working.forEach(({ paths, result }, index) => {
    for (const path of paths) byPath.set(keyOf(path), index);
    byName(result.name).push(index);
  });
  return {
    giving: (path) => {
      const index = byPath.get(keyOf(path));
      const step = index === undefined ? undefined : working[index];
      return index === undefined || step === undefined ? null : { step, index };
    },
    named: byName,
  };
}
