import type { FieldPath } from '../../errors.js';
import type { SourceId } from '../../sources/catalogue.js';
import type { StepItem } from '../../working.js';
import type { PlanStep } from '../plan/plan.js';

/** A value of a plan, with its name. */
export interface ExplainedValue {
  /** The value in words. */
  readonly name: string;
  /** The value. */
  readonly value: StepItem;
}

/** A value that a step of working gives, and what went into it. */
export interface WorkedExplanation extends ExplainedValue {
  /** Kind of origin. */
  readonly origin: 'step';
  /** The step that gives it. */
  readonly step: PlanStep;
  /** The origin of each value that the step takes, in its order. */
  readonly from: readonly Explanation[];
}

/** A value that the job file holds. */
export interface GivenExplanation extends ExplainedValue {
  /** Kind of origin. */
  readonly origin: 'job';
  /** The field of the job. */
  readonly path: FieldPath;
}

/** A published figure. */
export interface PublishedExplanation extends ExplainedValue {
  /** Kind of origin. */
  readonly origin: 'published';
  /** Where it is printed. */
  readonly source: SourceId;
}

/** A value that a step takes as it is: a constant of a formula, or a part that a procedure names. */
export interface StatedExplanation extends ExplainedValue {
  /** Kind of origin. */
  readonly origin: 'stated';
}

/** Where a value of a plan comes from. */
export type Explanation =
  WorkedExplanation | GivenExplanation | PublishedExplanation | StatedExplanation;
