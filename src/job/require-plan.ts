import { fault } from '../errors.js';
import { shown } from '../input/shown.js';
import type { JobCheck } from './check/check-job.js';
import type { PlanChange } from './compare/plan-change.js';
import type { JobPlan } from './plan/plan.js';
import type { WorkStep } from './steps/work-step.js';
import type { PlanUncertainty } from './uncertainty/plan-uncertainty.js';

const PLAN = Symbol.for('settline.plan');
const CHECK = Symbol.for('settline.check');
const STEP = Symbol.for('settline.step');
const CHANGE = Symbol.for('settline.change');
const UNCERTAINTY = Symbol.for('settline.uncertainty');

/** Marks a plan before it is frozen, so that what only looks like one can be told from it. Internal. */
export const markPlan = <T extends object>(plan: T): T => mark(plan, PLAN);

/** Marks a check before it is frozen. Internal. */
export const markCheck = <T extends object>(check: T): T => mark(check, CHECK);

/** Marks a step of work before it is frozen. Internal. */
export const markStep = <T extends object>(step: T): T => mark(step, STEP);

/** Marks a change of a plan before it is frozen. Internal. */
export const markChange = <T extends object>(change: T): T => mark(change, CHANGE);

/** Marks how well a plan is known before it is frozen. Internal. */
export const markUncertainty = <T extends object>(uncertainty: T): T =>
  mark(uncertainty, UNCERTAINTY);

const mark = <T extends object>(result: T, as: symbol): T =>
  Object.defineProperty(result, as, { value: true, enumerable: false });

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

/**
 * Refuses what is no check of a job. Internal.
 *
 * @throws `WRONG_TYPE`
 */
export function requireCheck(value: unknown): asserts value is JobCheck {
  if (isMarked(value, CHECK)) return;
  throw fault('WRONG_TYPE', `pass the result of checkJob(), got ${shown(value)}`);
}

/**
 * Refuses what is no step of work. Internal.
 *
 * @throws `WRONG_TYPE`
 */
export function requireStep(value: unknown): asserts value is WorkStep {
  if (isMarked(value, STEP)) return;
  throw fault('WRONG_TYPE', `pass a step of workSteps(), got ${shown(value)}`);
}

/**
 * Refuses what is no change of a plan. Internal.
 *
 * @throws `WRONG_TYPE`
 */
export function requireChange(value: unknown): asserts value is PlanChange {
  if (isMarked(value, CHANGE)) return;
  throw fault('WRONG_TYPE', `pass a change of comparePlans(), got ${shown(value)}`);
}

/**
 * Refuses what does not say how well a plan is known. Internal.
 *
 * @throws `WRONG_TYPE`
 */
export function requireUncertainty(value: unknown): asserts value is PlanUncertainty {
  if (isMarked(value, UNCERTAINTY)) return;
  throw fault('WRONG_TYPE', `pass the result of planUncertainty(), got ${shown(value)}`);
}

const isMarked = (value: unknown, as: symbol): boolean =>
  typeof value === 'object' &&
  value !== null &&
  Object.isFrozen(value) &&
  Object.getOwnPropertyDescriptor(value, as)?.value === true;
