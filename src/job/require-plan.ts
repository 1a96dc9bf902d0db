import { fault } from '../errors.js';
import { shown } from '../input/shown.js';
import type { JobCheck } from './check/check-job.js';
import type { JobPlan } from './plan/plan.js';

const PLAN = Symbol.for('settline.plan');
const CHECK = Symbol.for('settline.check');

/** Marks a plan before it is frozen, so that what only looks like one can be told from it. Internal. */
export const markPlan = <T extends object>(plan: T): T => mark(plan, PLAN);

/** Marks a check before it is frozen. Internal. */
export const markCheck = <T extends object>(check: T): T => mark(check, CHECK);

const mark = <T extends object>(result: T, as: symbol): T =>
  Object.defineProperty(result, as, { value: true, enumerable: false });

/**
 * Refuses what is no plan of the library. A copy of a plan is none. Internal.
 *
 * @throws `PLAN_INVALID`
 */
export function requirePlan(value: unknown): asserts value is JobPlan {
  if (isMarked(value, PLAN)) return;
  const message = `pass the result of planJob() or planFromJSON(), got ${shown(value)}`;
  throw fault('PLAN_INVALID', message);
}

/**
 * Refuses what is no check of a job. Internal.
 *
 * @throws `WRONG_TYPE`
 */
export function requireCheck(value: unknown): asserts value is JobCheck {
  if (isMarked(value, CHECK)) return;
  throw fault('WRONG_TYPE', `pass the result of checkJob(), got ${shown(value)}`);
}

const isMarked = (value: unknown, as: symbol): boolean =>
  typeof value === 'object' &&
  value !== null &&
  Object.isFrozen(value) &&
  Object.getOwnPropertyDescriptor(value, as)?.value === true;
