import { fault } from '../errors.js';
import { shown } from '../input/shown.js';
import { isMarked, mark } from './mark.js';
import type { JobPlan } from './plan/plan.js';

const PLAN = Symbol.for('settline.plan');

/** Marks a plan before it is frozen. Internal. */
export const markPlan = <T extends object>(plan: T): T => mark(plan, PLAN);

/**
 * Refuses what is no plan of the library. A copy of a plan is none. Internal.
 *
 * @throws `PLAN_INVALID`
 */
export function requirePlan(value: unknown): asserts value is JobPlan {
  if (isMarked(value, PLAN)) return;
  const message = `pass the result of planJob(), planFromJSON() or readPlan(), got ${shown(value)}`;
  throw fault('PLAN_INVALID', message);
}

/**
 * Refuses what is no plan, and a plan whose figures were not worked out from its job. Internal.
 *
 * @throws `PLAN_INVALID`
 */
export function requirePlannedFigures(value: unknown): asserts value is JobPlan {
  requirePlan(value);
  if (value.figures === 'planned') return;
  const message = `the figures of this plan are ${value.figures}. Read it with planFromJSON(), or plan its job again`;
  throw fault('PLAN_INVALID', message, { figures: value.figures }, ['figures']);
}
