import { expect } from 'vitest';
import { isSettlineError, type ErrorCode, type Issue } from 'settline';

/** Runs something that must be refused, and returns its faults. */
export function faultsOf(run: () => unknown): readonly Issue[] {
  try {
    run();
  } catch (error) {
    if (isSettlineError(error)) return error.issues;
    throw error;
  }
  expect.unreachable('nothing was refused');
}

/** Asserts that something is refused with one code. */
export function expectFault(run: () => unknown, code: ErrorCode): Issue {
  const [first] = faultsOf(run);
  expect(first?.code).toBe(code);
  if (first === undefined) expect.unreachable();
  return first;
}
