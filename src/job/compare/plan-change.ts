import type { FieldPath } from '../../errors.js';
import type { AnyQuantity } from '../../units/quantity.js';
import { mark, requireMarked } from '../mark.js';
import type { PlanWarning } from '../plan/plan.js';

/** What a change is about. */
export type ChangeSubject =
  | 'pavement'
  | 'layer'
  | 'depth'
  | 'edge'
  | 'area'
  | 'string'
  | 'stake'
  | 'order'
  | 'haul'
  | 'loads'
  | 'warning';

/** A value of a plan: an amount, words, a warning; null where there is none. */
export type PlanValue = AnyQuantity | number | string | PlanWarning | null;

/** One difference between two plans. */
export interface PlanChange {
  /** Whether a value differs, or something is in one of the plans only. */
  readonly kind: 'changed' | 'added' | 'removed';
  /** What it is about. */
  readonly about: ChangeSubject;
  /** Where it is in the plan after; in the plan before for what was removed. */
  readonly path: FieldPath;
  /** The pavement, string, stake or material. */
  readonly subject: string;
  /** What differs, in words: `depth of dig`. */
  readonly what: string;
  /** How a length is printed: short lengths as depths, long ones, elevations. */
  readonly printed: 'depth' | 'length' | 'elevation';
  /** In the plan before; null for what was added or not known. */
  readonly before: PlanValue;
  /** In the plan after; null for what was removed or is not known. */
  readonly after: PlanValue;
  /** After less before; null where one of them is no amount. */
  readonly difference: AnyQuantity | number | null;
}

const CHANGE = Symbol.for('settline.change');

/** Marks a change of a plan before it is frozen. Internal. */
export const markChange = <T extends object>(change: T): T => mark(change, CHANGE);

/**
 * Refuses what is no change of a plan. Internal.
 *
 * @throws `WRONG_TYPE`
 */
export function requireChange(value: unknown): asserts value is PlanChange {
  requireMarked(value, CHANGE, 'a change of comparePlans()');
}
