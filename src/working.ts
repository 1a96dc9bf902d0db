import type { SourceId } from './sources/catalogue.js';
import { isDecimal, type Decimal } from './units/decimal.js';
import { isQuantity, type AnyQuantity } from './units/quantity.js';

/** A value in the working: a quantity, a plain number, or words. */
export type StepValue = AnyQuantity | number | string;

/** An input of a formula, with its symbol. */
export interface StepInput {
  readonly symbol: string;
  readonly name: string;
  readonly value: StepValue;
}

/** One step of the working: title, formula, inputs, result and source. */
export interface Step {
  readonly title: string;
  readonly formula: string;
  readonly given: readonly StepInput[];
  readonly result: StepInput;
  readonly source: SourceId;
}

/** A result that carries its working. */
export interface Worked {
  /** The steps. Built on first access and left out of the JSON. */
  readonly working: readonly Step[];
}

/** Short form of a step input; a decimal becomes a number, which can be cloned. */
export const given = (symbol: string, name: string, value: StepValue | Decimal): StepInput => ({
  symbol,
  name,
  value: isDecimal(value) ? value.toNumber() : value,
});

/**
 * Deep-freezes a result and adds `working`, a non-enumerable getter that builds the steps on first
 * access. Internal.
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
