import type { PlanStep } from 'settline/job';

/** Steps without the texts of their values: JSON does not keep the unit that a value was written in. */
export const withoutTexts = (steps: readonly PlanStep[]): unknown[] =>
  steps.map(({ given, result, ...step }) => ({
    ...step,
    given: given.map((input) => ({ ...input, text: '' })),
    result: { ...result, text: '' },
  }));
