import { describe, expect, test } from 'vitest';
import type { Step } from 'settline';
import { attempt } from 'settline/errors';
import { recordedCalls } from '../properties/recorded-calls.js';
import { faultOfStep } from './evaluate-step.js';
import { stepsIn } from './steps-in.js';

const { calls } = await recordedCalls();
const worked = calls
  .map(({ name, call, given }) => ({ name, steps: stepsOfCall(() => call(...given)) }))
  .filter(({ steps }) => steps.length > 0);

/** An example may show a refusal. */
function stepsOfCall(run: () => unknown): readonly Step[] {
  const outcome = attempt(run);
  return outcome.ok ? stepsIn(outcome.value) : [];
}

/** Reading a formula may fail as well. */
function faultIn(step: Step): string | null {
  try {
    return step.kind === 'formula' ? faultOfStep(step) : null;
  } catch (error) {
    return String(error);
  }
}

describe('every formula of an example gives its result by another program', () => {
  test('there are many', () => {
    expect(worked.flatMap(({ steps }) => steps).length).toBeGreaterThan(250);
  });

  test.each(worked)('$name', ({ steps }) => {
    const faults = steps.flatMap((step) => {
      const fault = faultIn(step);
      return fault === null ? [] : [`${step.title}: ${fault}`];
    });
    expect(faults).toEqual([]);
  });
});
