import type { Step } from 'settline';

/** The formula of a step; undefined for a procedure and for no step. */
export const formulaOf = (step: Step | undefined): string | undefined =>
  step?.kind === 'formula' ? step.formula : undefined;
