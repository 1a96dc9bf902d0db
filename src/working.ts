import type { SourceId } from './sources/catalogue.js';
import type { Decimal } from './units/decimal.js';
import { isQuantity, type AnyQuantity } from './units/quantity.js';

/** A value in the working: a quantity, a plain number, or words. */
export type StepValue = AnyQuantity | Decimal | number | string;

/** A value put into a formula, with the letter it has there. */
export interface StepInput {
  readonly symbol: string;
  readonly name: string;
  readonly value: StepValue;
}

/** One line of working: what is worked out, how, from what, with what result and on whose word. */
export interface Step {
  readonly title: string;
  readonly formula: string;
  readonly given: readonly StepInput[];
  readonly result: StepInput;
  readonly source: SourceId;
}

/** A result that can show how it was come by. */
export interface Worked {
  /** The steps, made when first asked for. Not part of the JSON form. */
  readonly working: readonly Step[];
}

/** Short form of a step input. */
export const given = (symbol: string, name: string, value: StepValue): StepInput => ({
  symbol,
  name,
  value,
});

/**
 * Freezes a result through and through and hangs its working on it, made at the first request and
 * left out of loops and JSON.
 */
export function withWorking<T extends object>(
  fields: T,
  makeSteps: () => readonly Step[],
): Readonly<T> & Worked {
  let steps: readonly Step[] | undefined;
  Object.defineProperty(fields, 'working', {
    enumerable: false,
    get: () => (steps ??= deepFreeze(makeSteps())),
  });
  return deepFreeze(fields) as Readonly<T> & Worked;
}

/** Freezes plain objects and arrays all the way down; quantities are frozen already. */
export function deepFreeze<T>(value: T): T {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return value;
  if (isQuantity(value) || ArrayBuffer.isView(value)) return value;
  Object.freeze(value);
  for (const part of Object.values(value)) deepFreeze(part);
  return value;
}
