import { once } from './once.js';
import type { SourceId } from './sources/catalogue.js';
import { isDecimal, type Decimal } from './units/decimal.js';
import { isQuantity, type AnyQuantity } from './units/quantity.js';

/** One value in the working: a quantity, a plain number, or words. */
export type StepItem = AnyQuantity | number | string;

/** A value in the working, or a list of values that a formula takes one after another. */
export type StepValue = StepItem | readonly StepItem[];

/** An input of a formula, with its symbol. */
export interface StepInput {
  /** The symbol, as it stands in the formula. */
  readonly symbol: string;
  /** The quantity in words. */
  readonly name: string;
  /** The value put in. */
  readonly value: StepValue;
  /** The value as text, all digits of it, in the unit that it was written in. */
  readonly text: string;
  /** Where the value is printed, if it is a published figure; null if it is given or worked out. */
  readonly source: SourceId | null;
}

/** The fields of every step of working. */
export interface StepFields {
  /** The quantity worked out, in words. */
  readonly title: string;
  /** The inputs. */
  readonly given: readonly StepInput[];
  /** The result. */
  readonly result: StepInput;
  /** Where the formula or the rule is printed. */
  readonly source: SourceId;
}

/** A step that a pocket calculator can follow: the formula gives the result from the inputs. */
export interface FormulaStep extends StepFields {
  /** Kind of step. */
  readonly kind: 'formula';
  /** The formula, such as `E = D + a`, in the grammar of `docs/reference/formulas.md`. */
  readonly formula: string;
}

/** A step that is no formula: a function does it, such as moving out the edges of an outline. */
export interface ProcedureStep extends StepFields {
  /** Kind of step. */
  readonly kind: 'procedure';
  /** Name of the public function that does the step. */
  readonly procedure: string;
  /** The step in words: what the function does with the inputs, and what it returns. */
  readonly method: string;
}

/** One step of the working. */
export type Step = FormulaStep | ProcedureStep;

/** A result that carries its working. */
export interface Worked {
  /** The steps. Built on first access and left out of the JSON. */
  readonly working: readonly Step[];
}

/** A step that a formula gives. Internal. */
export const formulaStep = (fields: Omit<FormulaStep, 'kind'>): FormulaStep => ({
  kind: 'formula',
  ...fields,
});

/** A step that geometry and arithmetic alone give, without a publication. Internal. */
export const derivedStep = (fields: Omit<FormulaStep, 'kind' | 'source'>): FormulaStep =>
  formulaStep({ ...fields, source: 'derived' });

/** A step that a function does. Internal. */
export const procedureStep = (fields: Omit<ProcedureStep, 'kind'>): ProcedureStep => ({
  kind: 'procedure',
  ...fields,
});

/** An input of a step; a decimal becomes a number, which can be cloned. Internal. */
export const given = (
  symbol: string,
  name: string,
  value: StepValue | Decimal | readonly (StepItem | Decimal)[],
): StepInput => {
  const plain = Array.isArray(value) ? value.map(plainItem) : plainItem(value as StepItem);
  return { symbol, name, value: plain, text: textOf(plain), source: null };
};

/** An input of a step that is a published figure. Internal. */
export const published = (
  symbol: string,
  name: string,
  value: Parameters<typeof given>[2],
  source: SourceId,
): StepInput => ({ ...given(symbol, name, value), source });

const plainItem = (item: StepItem | Decimal): StepItem =>
  isDecimal(item) ? item.toNumber() : item;

const textOf = (value: StepValue): string =>
  Array.isArray(value) ? value.map(String).join(', ') : String(value);

/**
 * Deep-freezes a result and adds `working`, a non-enumerable getter that builds the steps on first
 * access. Internal.
 */
export function withWorking<T extends object>(
  fields: T,
  makeSteps: () => readonly Step[],
): Readonly<T> & Worked {
  return deepFreeze(hangWorking(fields, makeSteps)) as Readonly<T> & Worked;
}

const STEPS = Symbol('settline.steps');

interface WithSteps {
  readonly [STEPS]: () => unknown;
}

/** One getter for all results: with one each, no two results would have the same hidden class. */
const WORKING: PropertyDescriptor & ThisType<WithSteps> = {
  enumerable: false,
  get() {
    return this[STEPS]();
  },
};

/** Adds `working`, which builds the steps on first access. Internal. */
export function hangWorking<T extends object>(fields: T, makeSteps: () => readonly Step[]): T {
  Object.defineProperty(fields, STEPS, { value: once(() => deepFreeze(makeSteps())) });
  return Object.defineProperty(fields, 'working', WORKING);
}

/** Freezes plain objects and arrays all the way down; quantities are frozen already. */
export function deepFreeze<T>(value: T): T {
  if (typeof value !== 'object' || value === null) return value;
  if (isQuantity(value) || Object.isFrozen(value) || ArrayBuffer.isView(value)) return value;
  // the parts of an object not yet frozen are read sooner
  for (const part of Object.values(value)) deepFreeze(part);
  return Object.freeze(value);
}
