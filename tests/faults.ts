import { expect } from 'vitest';
import { isSettlineError, type ErrorCode, type Issue } from 'settline';
import { READING_REASONS, type ReadingReason } from 'settline/units';

/** Runs something that must be refused, and returns its faults. */
export function faultsOf(run: () => unknown): readonly Issue[] {
  try {
    run();
  } catch (error) {
    if (!isSettlineError(error)) throw error;
    // a word that is missing leaves two blanks, or one at an end
    for (const { message } of error.issues) expect(message).toMatch(/^\S+(?:\s\S+)*$/);
    return error.issues;
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

/** Asserts that text is refused as unreadable, for one reason. */
export function expectReason(run: () => unknown, reason: ReadingReason): Issue {
  const issue = expectFault(run, 'TEXT_UNREADABLE');
  expect(issue.params['reason']).toBe(reason);
  return issue;
}

/** Asserts the code, or the reason for which text is unreadable. */
export function expectFaultOrReason(run: () => unknown, what: ErrorCode | ReadingReason): Issue {
  return isReason(what) ? expectReason(run, what) : expectFault(run, what);
}

const isReason = (what: string): what is ReadingReason => Object.hasOwn(READING_REASONS, what);
