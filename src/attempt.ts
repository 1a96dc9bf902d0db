import { fault, isSettlineError, type Issue } from './errors.js';

/** What {@link attempt} gives back: the value, or all the faults. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly errors: readonly Issue[] };

/**
 * Runs a calculation and returns its faults instead of throwing them: the twin of every entry point
 * that throws. Errors that are not the library's own (a bug) pass through.
 *
 * @example
 * const outcome = attempt(() => buildUp({ layers: [] }));
 * outcome.ok //=> false
 */
export function attempt<T>(calculation: () => T): Outcome<T> {
  if (typeof calculation !== 'function') {
    return { ok: false, errors: fault('WRONG_TYPE', 'expected a function to run').issues };
  }
  try {
    return { ok: true, value: calculation() };
  } catch (error) {
    if (isSettlineError(error)) return { ok: false, errors: error.issues };
    throw error;
  }
}
