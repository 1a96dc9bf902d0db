import type { FieldPath } from '../../errors.js';
import type { SourceId } from '../../sources/catalogue.js';
import { given, type Step, type StepInput } from '../../working.js';

/** Fields of the plan that a step gives and takes. */
export interface Placing {
  /**
   * The fields of the plan that the result stands in: one for each value if the result is a list, else
   * every field that holds the value. Empty for a step on the way.
   */
  readonly paths: readonly FieldPath[];
  /**
   * For the symbol of an input: the field of the plan, or of the job inside it, that each of its values is
   * taken from.
   */
  readonly takes: Readonly<Record<string, readonly FieldPath[]>>;
}

/**
 * A step with the fields that it gives and takes, from the part of the plan that it belongs to. A path
 * that starts with `given` is of the same part of the job, with `job` of the job, with `plan` of the
 * whole plan. Internal.
 */
export type PlacedStep = Step & Partial<Placing>;

/** Says which fields a step gives and takes. Internal. */
export const place = (
  step: PlacedStep,
  paths: readonly FieldPath[],
  takes: Placing['takes'] = {},
): PlacedStep => ({ ...step, paths, takes: { ...step.takes, ...takes } });

/** Says it of every step of an owner, by the symbols of its results and inputs. Internal. */
export const placeBy = (
  steps: readonly PlacedStep[],
  fields: Readonly<Record<string, readonly FieldPath[]>>,
  takes: Placing['takes'] = {},
): PlacedStep[] =>
  steps.map((step) => {
    const symbols = new Set(step.given.map(({ symbol }) => symbol));
    const own = Object.entries(takes).filter(([symbol]) => symbols.has(symbol));
    return place(step, fields[step.result.symbol] ?? [], Object.fromEntries(own));
  });

/** The paths of a step from the root of the plan. Internal. */
export function fromRoot({ paths = [], takes = {} }: Partial<Placing>, part: FieldPath): Placing {
  const whole = (path: FieldPath): FieldPath => {
    const [first, ...rest] = path;
    if (first === 'job') return path;
    if (first === 'given') return ['job', ...part, ...rest];
    return first === 'plan' ? rest : [...part, ...path];
  };
  const taken = Object.entries(takes).map(([symbol, from]) => [symbol, from.map(whole)] as const);
  return { paths: paths.map(whole), takes: Object.fromEntries(taken) };
}

/** An input of a step, and the fields that its values are taken from. Internal. */
export interface Taken {
  readonly input: StepInput;
  readonly from: readonly FieldPath[];
}

/** An input taken from fields: one for each value if it is a list. Internal. */
export const take = (
  symbol: string,
  name: string,
  value: Parameters<typeof given>[2],
  ...from: readonly FieldPath[]
): Taken => ({ input: given(symbol, name, value), from });

/** A step with the fields that it takes and gives. */
interface Shown {
  readonly title: string;
  readonly takes: readonly Taken[];
  readonly result: StepInput;
  /** The fields that it gives. */
  readonly gives: readonly FieldPath[];
  /** Where the rule is printed; `derived` unless given. */
  readonly source?: SourceId;
}

const fieldsOf = ({ title, takes, result, gives, source = 'derived' }: Shown) => ({
  title,
  given: takes.map(({ input }) => input),
  result,
  source,
  paths: gives,
  takes: Object.fromEntries(
    takes.flatMap(({ input, from }) => (from.length === 0 ? [] : [[input.symbol, from]])),
  ),
});

/** A formula with the fields that it takes and gives. Internal. */
export const worked = (shown: Shown & { readonly formula: string }): PlacedStep => ({
  kind: 'formula',
  formula: shown.formula,
  ...fieldsOf(shown),
});

/** A procedure with the fields that it takes and gives. Internal. */
export const done = (
  shown: Shown & { readonly procedure: string; readonly method: string },
): PlacedStep => ({
  kind: 'procedure',
  procedure: shown.procedure,
  method: shown.method,
  ...fieldsOf(shown),
});
