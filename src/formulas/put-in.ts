import type { StepInput, StepItem, StepValue } from '../working.js';
import type { Formula, FormulaNode, NameNode } from './formula-node.js';
import { formulaText } from './formula-text.js';

/** More items than a line of working shows. */
const MOST_ITEMS = 12;

/**
 * An expression with the values put in for its symbols; null where it takes a list item by item in a
 * way that one line cannot show. Internal.
 */
export function putIn(
  { expression }: Formula,
  inputs: readonly StepInput[],
  textOf: (item: StepItem) => string,
): string | null {
  const values = new Map(inputs.map(({ symbol, value }) => [symbol, value]));
  if (!canShow(expression, values)) return null;
  return formulaText(expression, (node) => {
    const value = values.get(node.name);
    if (value === undefined) return node.name;
    const items = isList(value) ? itemsOf(value, node) : [value];
    return items.map(textOf).join(', ');
  });
}

const isList = (value: StepValue): value is readonly StepItem[] => Array.isArray(value);

/** The item with that number, or the whole list. */
function itemsOf(list: readonly StepItem[], { index }: NameNode): readonly StepItem[] {
  if (index?.kind !== 'number') return list;
  return list.slice(Number(index.text) - 1, Number(index.text));
}

/** True where each list is taken whole, or one item of it. */
function canShow(node: FormulaNode, values: ReadonlyMap<string, StepValue>): boolean {
  if (node.kind === 'call' && node.args.length === 1) {
    const [list] = node.args;
    if (list !== undefined && isWholeList(list, values)) return true;
  }
  if (node.kind === 'name') return isShort(node, values.get(node.name));
  return partsOf(node).every((part) => canShow(part, values));
}

const isWholeList = (node: FormulaNode, values: ReadonlyMap<string, StepValue>): boolean => {
  if (node.kind !== 'name') return false;
  const value = values.get(node.name);
  const isRunning = node.index === null || node.index.kind === 'name';
  return value !== undefined && isList(value) && isRunning && value.length <= MOST_ITEMS;
};

/** One value, or one item of a list. */
const isShort = ({ index }: NameNode, value: StepValue | undefined): boolean =>
  value === undefined || !isList(value) || index?.kind === 'number';

function partsOf(node: FormulaNode): readonly FormulaNode[] {
  switch (node.kind) {
    case 'call':
      return node.args;
    case 'unary':
      return [node.operand];
    case 'binary':
      return [node.left, node.right];
    case 'choice':
      return [node.test, node.yes, node.no];
    default:
      return [];
  }
}
