import { fault, SettlineError, type FieldPath, type Issue } from '../../errors.js';
import { MOST_PARTS } from './saved-limits.js';

/** What is known while a saved plan is read. Internal. */
export interface Reading {
  /** Where the reading is; changed in place. */
  readonly at: (string | number)[];
  /** Notes a fault where the reading is, or at a path from there. */
  readonly fail: (message: string, below?: FieldPath) => void;
  /** Counts what is read; refuses what never ends. */
  readonly spend: (parts: number) => void;
  /** Throws one error with all faults, if there are any. */
  readonly finish: () => void;
}

/** Faults listed; the last entry counts the rest. Internal. */
export const MOST_LISTED = 100;

/** Starts to read a saved plan. Internal. */
export function startReading(): Reading {
  const issues: Issue[] = [];
  const at: (string | number)[] = [];
  let count = 0;
  let spent = 0;
  return {
    at,
    fail: (message, below = []) => {
      count += 1;
      if (count > MOST_LISTED) return;
      issues.push({ path: [...at, ...below], code: 'PLAN_INVALID', message, params: {} });
    },
    spend: (parts) => {
      spent += parts;
      if (spent <= MOST_PARTS) return;
      const message = `more than ${MOST_PARTS} figures and texts. No plan is so large`;
      throw fault('PLAN_INVALID', message, { most: MOST_PARTS }, [...at]);
    },
    finish: () => {
      if (count > 0) throw manyFaults(issues, count);
    },
  };
}

/** One error of many faults: those that are listed, and the number of the rest. Internal. */
export function manyFaults(listed: readonly Issue[], count: number): SettlineError {
  const rest = count - listed.length;
  const more: Issue = {
    path: [],
    code: 'MORE_FAULTS',
    message: `${rest} more ${rest === 1 ? 'fault is' : 'faults are'} not listed`,
    params: { count: rest },
  };
  const [first = more, ...others] = rest > 0 ? [...listed, more] : listed;
  return new SettlineError([first, ...others]);
}

/** Reads one part; the path follows. Internal. */
export function within<T>({ at }: Reading, key: string | number, read: () => T): T {
  at.push(key);
  const value = read();
  at.pop();
  return value;
}
