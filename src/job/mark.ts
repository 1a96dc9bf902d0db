import { fault } from '../errors.js';
import { shown } from '../input/shown.js';

/** Marks a result before it is frozen, so that what only looks like one can be told from it. Internal. */
export const mark = <T extends object>(result: T, as: symbol): T =>
  Object.defineProperty(result, as, { value: true, enumerable: false });

/** True for a frozen result with a mark; a copy has none. Internal. */
export const isMarked = (value: unknown, as: symbol): boolean =>
  typeof value === 'object' &&
  value !== null &&
  Object.isFrozen(value) &&
  Object.getOwnPropertyDescriptor(value, as)?.value === true;

/**
 * Refuses what has no mark; `made` says how to get one that has it. Internal.
 *
 * @throws `WRONG_TYPE`
 */
export function requireMarked(value: unknown, as: symbol, made: string): void {
  if (isMarked(value, as)) return;
  throw fault('WRONG_TYPE', `pass ${made}, got ${shown(value)}`);
}
