import {
  BINDING,
  CHOICE_BINDING,
  MINUS_BINDING,
  NOT_BINDING,
  type BinaryNode,
  type FormulaNode,
  type NameNode,
} from './formula-node.js';

/** Text of a symbol: as it is, or the value put in for it. */
type TextOfName = (node: NameNode) => string;

const ATOM = 10;

/** An expression as a person writes it, with a sign of multiplication. Internal. */
export const formulaText = (node: FormulaNode, textOfName: TextOfName): string =>
  print(node, textOfName).text;

interface Printed {
  readonly text: string;
  readonly binding: number;
}

const atom = (text: string): Printed => ({ text, binding: ATOM });

function print(node: FormulaNode, textOfName: TextOfName): Printed {
  const inside = (part: FormulaNode, least: number): string => {
    const { text, binding } = print(part, textOfName);
    return binding < least ? `(${text})` : text;
  };
  switch (node.kind) {
    case 'number':
    case 'words':
      return atom(node.text);
    case 'name':
      return valuePrinted(textOfName(node));
    case 'call':
      return atom(`${node.name}(${node.args.map((arg) => inside(arg, 0)).join(', ')})`);
    case 'unary':
      return node.sign === '-'
        ? { text: `-${inside(node.operand, MINUS_BINDING)}`, binding: MINUS_BINDING }
        : { text: `not ${inside(node.operand, NOT_BINDING)}`, binding: NOT_BINDING };
    case 'choice': {
      const [yes, test, no] = [node.yes, node.test, node.no].map((part) => inside(part, 2));
      return { text: `${yes} where ${test}, else ${no}`, binding: CHOICE_BINDING };
    }
    case 'binary':
      return printBinary(node, inside);
  }
}

function printBinary(
  { sign, left, right }: BinaryNode,
  inside: (part: FormulaNode, least: number) => string,
): Printed {
  const binding = BINDING[sign];
  // what is taken off or divided by keeps its brackets, and so does the base of a power
  const leastRight = sign === '^' ? binding : binding + 1;
  const leastLeft = sign === '^' ? ATOM : binding;
  const isSum = sign === '+' || sign === '*';
  const rightText = inside(right, isSum ? binding : leastRight);
  return { text: `${inside(left, leastLeft)}${between(sign)}${rightText}`, binding };
}

const between = (sign: BinaryNode['sign']): string =>
  sign === '^' ? '^' : ` ${sign === '*' ? '×' : sign} `;

/** A value with a unit or a sign stands in brackets where a sign would take it apart. */
function valuePrinted(text: string): Printed {
  if (text.startsWith('-')) return { text, binding: BINDING['+'] };
  if (/[ ].*\/|\/.*[ ]/.test(text)) return { text, binding: BINDING['/'] };
  return text.includes(' ') ? { text, binding: MINUS_BINDING } : atom(text);
}
