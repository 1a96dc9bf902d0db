import { known } from '../../invariant.js';
import type { SourceId } from '../../sources/catalogue.js';
import type { SourceStatus } from '../../sources/source.js';
import { deepFreeze, type StepItem } from '../../working.js';
import type { JobPlan } from '../plan/plan.js';
import { requirePlan } from '../require-plan.js';
import { isSame, itemsOf } from './same-value.js';

/** A published figure that a plan uses. */
export interface PublishedFigure {
  /** The figure in words. */
  readonly name: string;
  /** The figure. */
  readonly value: StepItem;
  /** Id in `SOURCES`. */
  readonly source: SourceId;
  /** Title of the source. */
  readonly title: string;
  /** Section where the figure is printed. */
  readonly section: string;
  /** Whether the source was read. */
  readonly status: SourceStatus;
  /** Parts of the job in which it is used. */
  readonly usedIn: readonly string[];
}

/**
 * The published figures that a plan uses, each once, with its source and the parts of the job that it
 * is used in.
 *
 * @param plan - from `planJob` or `planFromJSON`; not changed
 * @returns a frozen list, in the order in which the working uses them
 * @throws `PLAN_INVALID` if it is not a plan
 * @source derived
 * @example
 * const [first] = publishedFigures(planJob(job));
 * [first?.name, String(first?.value), first?.source] //=> ['published minimum paver', '3.125 in', 'paver-tolerances']
 */
export function publishedFigures(plan: JobPlan): readonly PublishedFigure[] {
  requirePlan(plan);
  const figures: (PublishedFigure & { readonly usedIn: string[] })[] = [];
  for (const { given, subject, takes } of plan.working) {
    for (const { name, symbol, value, source } of given) {
      // what a step takes from another one is listed there
      if (source === null || takes[symbol] !== undefined) continue;
      for (const item of itemsOf(value)) {
        const listed = figures.find(
          (one) => one.name === name && one.source === source && isSame(item, one.value),
        );
        if (listed === undefined) {
          const { title, section, status } = known(
            plan.sources.find(({ id }) => id === source),
            `source ${source} in the plan`,
          );
          figures.push({ name, value: item, source, title, section, status, usedIn: [subject] });
        } else if (!listed.usedIn.includes(subject)) {
          listed.usedIn.push(subject);
        }
      }
    }
  }
  return deepFreeze(figures);
}
