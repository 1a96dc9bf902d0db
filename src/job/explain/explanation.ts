import type { FieldPath } from '../../errors.js';
import type { SourceId } from '../../sources/catalogue.js';
import type { StepItem } from '../../working.js';
import type { PlanStep } from '../plan/plan.js';

/** A value that a step of working gives, and what went into it. */
export interface WorkedExplanation {
  /** Kind of origin. */
  readonly origin: 'step';
  /** The value in words. */
  readonly name: string;
  /** The value. */
  readonly value: StepItem;
  /** The step that gives it. */
  readonly step: PlanStep;
  /** The origin of each value that the step takes, in its order. */
  readonly from: readonly Explanation[];
}

/** A value that the job file holds. */
export interface GivenExplanation {
  /** Kind of origin. */
  readonly origin: 'job';
  /** The value in words. */
  readonly name: string;
  /** The value. */
  readonly value: StepItem;
  /** The field of the job. */
  readonly path: FieldPath;
}

/** A published figure. */
export interface PublishedExplanation {
  /** Kind of origin. */
  readonly origin: 'published';
  /** The value in words. */
  readonly name: string;
  /** The value. */
  readonly value: StepItem;
  /** Where it is printed. */
  readonly source: SourceId;
}

/** A value that a step takes as it is: a constant of a formula, or a part that a procedure names. */
export interface StatedExplanation {
  /** Kind of origin. */
  readonly origin: 'stated';
  /** The value in words. */
  readonly name: string;
  /** The value. */
  readonly value: StepItem;
}

/** Where a value of a plan comes from. */
export type Explanation =
  WorkedExplanation | GivenExplanation | PublishedExplanation | StatedExplanation;
