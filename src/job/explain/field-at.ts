import { fault, pathText, type FieldPath } from '../../errors.js';
import { shown } from '../../input/shown.js';
import { isQuantity } from '../../units/quantity.js';
import type { StepItem } from '../../working.js';
import type { JobPlan } from '../plan/plan.js';

/**
 * The quantity, number or word at a path of a plan. Internal.
 *
 * @throws `WRONG_TYPE` if it is not a path, `UNKNOWN_FIELD` where the plan has no such field or one
 *   that is no single value
 */
export function fieldAt(plan: JobPlan, path: FieldPath): StepItem {
  if (!Array.isArray(path) || path.length === 0 || !path.every(isKey)) {
    const words = `expected a path such as ['pavements', 0, 'dig', 'soil'], got ${shown(path)}`;
    throw fault('WRONG_TYPE', words);
  }
  let value: unknown = plan;
  path.forEach((key, index) => {
    const isHolder = typeof value === 'object' && value !== null && !isQuantity(value);
    if (!isHolder || !Object.hasOwn(value as object, key)) {
      const words = `a plan has no ${pathText(path.slice(0, index + 1))}`;
      throw fault('UNKNOWN_FIELD', words, {}, [...path]);
    }
    value = (value as Record<string | number, unknown>)[key];
  });
  if (isItem(value)) return value;
  throw fault('UNKNOWN_FIELD', `${pathText(path)} holds no single value`, {}, [...path]);
}

const isKey = (key: unknown): key is string | number =>
  typeof key === 'string' || (typeof key === 'number' && Number.isInteger(key) && key >= 0);

const isItem = (value: unknown): value is StepItem =>
  isQuantity(value) || typeof value === 'number' || typeof value === 'string';
