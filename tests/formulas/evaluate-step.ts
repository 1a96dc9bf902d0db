import { all, create, type BigNumber, type MathJsInstance, type MathNode, type Unit } from 'mathjs';
import type { Dimension, FormulaNode, FormulaStep, StepItem, StepValue } from 'settline';
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
  relTol: 1e-45,
  absTol: 1e-60,
});

/** A function that gets its arguments unread, to read them once for each item of a list. */
function overItems(fold: (items: readonly Value[]) => Value): object {
  const read = (args: readonly MathNode[], _: unknown, scope: Scope) =>
    fold(args.flatMap((arg) => itemsOf(arg, scope)));
  return Object.assign(read, { rawArgs: true });
}

function evaluate(node: MathNode, scope: Scope): Value {
  const value: unknown = node.compile().evaluate(scope);
  return value as Value;
}

function itemsOf(arg: MathNode, scope: Scope): Value[] {
  const isRunning = arg.filter((node) => (node as { name?: string }).name === 'i').length > 0;
  if (!isRunning) {
    const all = evaluate(arg, scope);
    return Array.isArray(all) ? [...(all as Value[])] : [all];
  }
  const longest = Math.max(
    ...[...scope.values()].map((value) => (Array.isArray(value) ? value.length : 0)),
  );
  const items: Value[] = [];
  for (let i = 1; i <= longest; i += 1) {
    try {
      items.push(evaluate(arg, new Map([...scope, ['i', math.bignumber(i)]])));
    } catch (error) {
      // the index runs as far as every list that it is used for
      if (!(error instanceof Error && error.message.startsWith('Index out of range'))) throw error;
    }
  }
  return items;
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
    max: overItems((items) => items.reduce((most, item) => (larger(item, most) ? item : most))),
    min: overItems((items) => items.reduce((least, item) => (larger(least, item) ? item : least))),
    count: overItems((items) => math.bignumber(items.length)),
  },
  { override: true },
);

/** Why a step of working does not hold, by another program; null where it does. */
export function faultOfStep(step: FormulaStep): string | null {
  const { result, expression } = readFormula(step.formula);
  if (result !== step.result.symbol)
    return `gives ${result}, but the result is ${step.result.symbol}`;
  const symbols = new Set(step.given.map(({ symbol }) => symbol));
  const unknown = namesIn(expression).find(
    (name) => !symbols.has(name) && !/^(?:i|pi)$/.test(name),
  );
  if (unknown !== undefined) return `${unknown} is not given`;
  const unused = [...symbols].find((name) => !namesIn(expression).includes(name));
  if (unused !== undefined) return `${unused} is given and not used`;
  const scope = new Map(step.given.map(({ symbol, value }) => [symbol, valueOf(value)]));
  const [, right = ''] = /^[^=]*=(.*)$/s.exec(step.formula) ?? [];
  const got = evaluate(math.parse(right), scope);
  return differenceOf(got, step);
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
