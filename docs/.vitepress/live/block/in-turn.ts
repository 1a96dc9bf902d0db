import { attempt, SettlineError, type Issue, type Outcome } from 'settline/errors';

/**
 * Runs two calculations, the second on the result of the first. Where the first is refused the second
 * runs on a stand-in, so that the faults of both are told at once.
 */
export function inTurn<A, B>(
  first: () => A,
  standIn: () => A,
  second: (value: A) => B,
): Outcome<B> {
  const before = attempt(first);
  const after = attempt(() => second(before.ok ? before.value : standIn()));
  if (before.ok) return after;
  return { ok: false, errors: after.ok ? before.errors : [...before.errors, ...after.errors] };
}

/** The faults of several calculations as one error. */
export function refusal(errors: readonly Issue[]): Error {
  const [first, ...rest] = errors;
  return first === undefined
    ? new Error('refused without a fault')
    : new SettlineError([first, ...rest]);
}
