import { fault, isSettlineError, type Issue } from './errors.js';

/** Result of {@link attempt}: the value, or all the faults. */
export type Outcome<T> =
  | {
      /** True if the calculation returned a value. */
      readonly ok: true;
      /** Value that the calculation returned. */
      readonly value: T;
    }
  | {
      /** False if the input was refused. */
      readonly ok: false;
      /** Every fault of the input. */
      readonly errors: readonly Issue[];
    };

/**
 * Runs a calculation and returns its faults instead of throwing them. Other errors (a bug) pass
 * through.
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
