import {
  all,
  create,
  type BigNumber,
  type EvalFunction,
  type MathJsInstance,
  type MathNode,
  type Unit,
} from 'mathjs';
import type { Dimension, FormulaNode, FormulaStep, Step, StepItem, StepValue } from 'settline';
import { readFormula } from 'settline/formulas';
import { isQuantity } from 'settline/units';

/** A value as the other program has it. */
type Value = BigNumber | Unit | boolean | string | readonly Value[];
type Scope = Map<string, unknown>;

/** Units of the other program; slopes and angles are plain numbers there. */
const UNITS: Readonly<Record<Dimension, string | null>> = {
  length: 'm',
  area: 'm^2',
  volume: 'm^3',
  mass: 'kg',
  density: 'kg/m^3',
  force: 'N',
  'line-weight': 'N/m',
  pressure: 'Pa',
  slope: null,
  angle: null,
  time: 's',
  speed: 'm/s',
  flow: 'm^3/s',
};

const math: MathJsInstance = create(all ?? {}, {
  number: 'BigNumber',
  precision: 50,
  relTol: 1e-35,
  absTol: 1e-60,
});

/** A function that gets its arguments unread, to read them once for each item of a list. */
function overItems(fold: (items: readonly Value[]) => Value): object {
  const read = (args: readonly MathNode[], _: unknown, scope: Scope) =>
    fold(args.flatMap((arg) => itemsOf(arg, scope)));
  return Object.assign(read, { rawArgs: true });
}

/** Formulas and parts of formulas come again with other values. */
const compiled = new WeakMap<MathNode, EvalFunction>();

function evaluate(node: MathNode, scope: Scope): Value {
  const run = compiled.get(node) ?? node.compile();
  compiled.set(node, run);
  const value: unknown = run.evaluate(scope);
  return value as Value;
}

interface ReadFormula {
  readonly result: string;
  readonly names: ReadonlySet<string>;
  readonly node: MathNode;
}

const formulas = new Map<string, ReadFormula>();

function formulaOnce(formula: string): ReadFormula {
  const known = formulas.get(formula);
  if (known !== undefined) return known;
  const { result, expression } = readFormula(formula);
  const [, right = ''] = /^[^=]*=(.*)$/s.exec(formula) ?? [];
  const read = { result, names: new Set(namesIn(expression)), node: math.parse(right) };
  formulas.set(formula, read);
  return read;
}

function itemsOf(arg: MathNode, scope: Scope): Value[] {
  const isRunning = arg.filter((node) => (node as { name?: string }).name === 'i').length > 0;
  if (!isRunning) {
    const all = evaluate(arg, scope);
    return Array.isArray(all) ? [...(all as Value[])] : [all];
  }
  const known = new Map([...scope.keys()].map((name) => [name, scope.get(name)]));
  const longest = Math.max(
    ...[...known.values()].map((value) => (Array.isArray(value) ? value.length : 0)),
  );
  const items: Value[] = [];
  for (let i = 1; i <= longest; i += 1) {
    try {
      items.push(evaluate(arg, known.set('i', math.bignumber(i))));
    } catch (error) {
      // the index runs as far as every list that it is used for
      if (!(error instanceof Error && error.message.startsWith('Index out of range'))) throw error;
    }
  }
  return items;
}

/** A plain zero among quantities is a zero of their kind. */
function ofOneKind(items: readonly Value[]): readonly Value[] {
  const unit = items.find((item) => math.isUnit(item));
  if (unit === undefined) return items;
  const zero: Value = math.subtract(unit, unit);
  return items.map((item) => (math.isBigNumber(item) && item.isZero() ? zero : item));
}

const larger = (a: Value, b: Value): boolean => math.larger(a as Unit, b as Unit) as boolean;
const total = (items: readonly Value[]): Value =>
  items
    .slice(1)
    .reduce((sum, item) => math.add(sum as Unit, item as Unit), items[0] ?? math.bignumber(0));

math.import(
  {
    sum: overItems(total),
    mean: overItems((items) => math.divide(total(items) as Unit, items.length)),
    max: overItems((items) =>
      ofOneKind(items).reduce((most, item) => (larger(item, most) ? item : most)),
    ),
    min: overItems((items) =>
      ofOneKind(items).reduce((least, item) => (larger(least, item) ? item : least)),
    ),
    count: overItems((items) => math.bignumber(items.length)),
  },
  { override: true },
);

/** Why a step of working does not hold, by another program; null where it does. */
export function faultOfStep(step: FormulaStep): string | null {
  const { result, names, node } = formulaOnce(step.formula);
  if (result !== step.result.symbol)
    return `gives ${result}, but the result is ${step.result.symbol}`;
  const symbols = new Set(step.given.map(({ symbol }) => symbol));
  const unknown = [...names].find((name) => !symbols.has(name) && !/^(?:i|pi)$/.test(name));
  if (unknown !== undefined) return `${unknown} is not given`;
  const unused = [...symbols].find((name) => !names.has(name));
  if (unused !== undefined) return `${unused} is given and not used`;
  const scope = new Map(step.given.map(({ symbol, value }) => [symbol, valueOf(value)]));
  return differenceOf(evaluate(node, scope), step);
}

/** Why steps of working do not hold, each with its title. A formula that cannot be read is a fault. */
export const formulaFaults = (steps: readonly Step[]): string[] =>
  steps.flatMap((step) => {
    const fault = faultIn(step);
    return fault === null ? [] : [`${step.title}: ${fault}`];
  });

function faultIn(step: Step): string | null {
  try {
    return step.kind === 'formula' ? faultOfStep(step) : null;
  } catch (error) {
    return String(error);
  }
}

/** The relative rounding that a step may have. */
const CLOSE = 1e-12;

function differenceOf(got: Value, { result, given }: FormulaStep): string | null {
  const wanted = result.value;
  if (typeof wanted === 'string' || typeof got === 'string' || typeof got === 'boolean') {
    return String(got) === String(wanted) ? null : `gives ${String(got)}, not ${String(wanted)}`;
  }
  if (isList(wanted) || Array.isArray(got)) return 'gives a list';
  const unit = isQuantity(wanted) ? UNITS[wanted.dimension] : null;
  if ((unit !== null) !== math.isUnit(got)) return `gives ${String(got)}, another kind of value`;
  const [have, want] = [numberOf(got, unit), Number(siOf(wanted))];
  // a small difference of large values keeps only their digits
  const sizes = given
    .flatMap(({ value }) => (isList(value) ? value : [value]))
    .filter((item) => dimensionOf(item) === dimensionOf(wanted))
    .map((item) => Math.abs(Number(siOf(item))));
  const size = Math.max(Math.abs(want), ...sizes.filter(Number.isFinite));
  return Math.abs(have - want) <= CLOSE * size ? null : `gives ${have}, not ${want}`;
}

const numberOf = (value: Value, unit: string | null): number =>
  unit === null ? Number(value) : Number(math.format((value as Unit).toNumeric(unit), 40));

const dimensionOf = (item: StepItem): string => (isQuantity(item) ? item.dimension : typeof item);

const siOf = (item: StepItem): string => (isQuantity(item) ? item.si.toString() : String(item));

const isList = (value: StepValue): value is readonly StepItem[] => Array.isArray(value);

const valueOf = (value: StepValue): Value => (isList(value) ? value.map(itemOf) : itemOf(value));

function itemOf(item: StepItem): Value {
  if (typeof item === 'string') return item;
  const number = math.bignumber(siOf(item));
  const unit = isQuantity(item) ? UNITS[item.dimension] : null;
  return unit === null ? number : math.unit(number, unit);
}

/** The symbols of an expression. */
function namesIn(node: FormulaNode): string[] {
  switch (node.kind) {
    case 'name':
      return [node.name, ...(node.index === null ? [] : namesIn(node.index))];
    case 'call':
      return node.args.flatMap(namesIn);
    case 'unary':
      return namesIn(node.operand);
    case 'binary':
      return [...namesIn(node.left), ...namesIn(node.right)];
    case 'choice':
      return [node.test, node.yes, node.no].flatMap(namesIn);
    default:
      return [];
  }
}
