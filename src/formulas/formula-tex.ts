import { BINDING, type BinarySign, type FormulaNode } from './formula-node.js';
import { readFormula } from './read-formula.js';

/**
 * Writes a formula of the working in TeX, to be typeset by an app or a page.
 *
 * @param formula - the formula, such as `'f = w * L^2 / (8 * H)'`
 * @returns the same in TeX, in the mathematics mode of LaTeX
 * @throws `WRONG_TYPE` if it is not a text, `FORMULA_INVALID` if the grammar does not know it
 * @source derived
 * @example
 * formulaTeX('E = D + a') //=> 'E = D + a'
 * formulaTeX('g = (z1 - z2) / L') //=> 'g = \\frac{z_{1} - z_{2}}{L}'
 */
export function formulaTeX(formula: string): string {
  const { result, expression } = readFormula(formula);
  return `${symbolTeX(result)} = ${tex(expression)}`;
}

const SIGNS: Readonly<Record<Exclude<BinarySign, '/' | '^'>, string>> = {
  '+': '+',
  '-': '-',
  '*': '\\,',
  '<': '<',
  '<=': '\\le',
  '>': '>',
  '>=': '\\ge',
  '==': '=',
  '!=': '\\ne',
  and: '\\text{ and }',
  or: '\\text{ or }',
};

const NAMED: Readonly<Record<string, string>> = {
  asin: '\\arcsin',
  acos: '\\arccos',
  atan: '\\arctan',
  log: '\\ln',
  log10: '\\log_{10}',
};

/** First letter upright or slanted, what follows as a subscript; capitals alone stay a word. */
function symbolTeX(name: string): string {
  if (name === 'pi') return '\\pi';
  if (/^[A-Z]{2,}$/.test(name)) return `\\mathrm{${name}}`;
  const [, head = name, tail = ''] = /^([A-Z]{2,}|[A-Za-z])(.*)$/.exec(name) ?? [];
  const symbol = head.length > 1 ? `\\mathrm{${head}}` : head;
  if (tail === '') return symbol;
  return `${symbol}_{${/^\d+$/.test(tail) ? tail : `\\mathrm{${tail}}`}}`;
}

function tex(node: FormulaNode): string {
  switch (node.kind) {
    case 'number':
      return node.text;
    case 'words':
      return `\\text{${node.text}}`;
    case 'name':
      return node.index === null
        ? symbolTeX(node.name)
        : `{${symbolTeX(node.name)}}_{[${tex(node.index)}]}`;
    case 'call':
      return callTeX(node.name, node.args);
    case 'unary':
      return node.sign === '-'
        ? `-${within(node.operand, 7)}`
        : `\\text{not }${within(node.operand, 5)}`;
    case 'choice':
      return `\\begin{cases}${tex(node.yes)} & \\text{if } ${tex(node.test)}\\\\ ${tex(node.no)} & \\text{otherwise}\\end{cases}`;
    case 'binary':
      return binaryTeX(node.sign, node.left, node.right);
  }
}

function callTeX(name: string, args: readonly FormulaNode[]): string {
  const list = args.map(tex).join(',\\ ');
  switch (name) {
    case 'sqrt':
      return `\\sqrt{${list}}`;
    case 'abs':
      return `\\left|${list}\\right|`;
    case 'ceil':
      return `\\left\\lceil ${list}\\right\\rceil`;
    case 'floor':
      return `\\left\\lfloor ${list}\\right\\rfloor`;
    case 'exp':
      return `e^{${list}}`;
    case 'sum':
      return `\\sum \\left(${list}\\right)`;
    default:
      return `${NAMED[name] ?? `\\operatorname{${name}}`}\\left(${list}\\right)`;
  }
}

function binaryTeX(sign: BinarySign, left: FormulaNode, right: FormulaNode): string {
  if (sign === '/') return `\\frac{${tex(left)}}{${tex(right)}}`;
  if (sign === '^') return `${within(left, 10)}^{${tex(right)}}`;
  const [before, after] = [within(left, BINDING[sign]), within(right, BINDING[sign] + 1)];
  const isBetweenFigures = sign === '*' && /\d$/.test(before) && /^\d/.test(after);
  return `${before} ${isBetweenFigures ? '\\times' : SIGNS[sign]} ${after}`;
}

/** In brackets where it binds less closely than its surroundings ask. */
function within(node: FormulaNode, least: number): string {
  const text = tex(node);
  return bindingOf(node) < least ? `\\left(${text}\\right)` : text;
}

function bindingOf(node: FormulaNode): number {
  if (node.kind === 'choice') return 1;
  if (node.kind === 'unary') return node.sign === '-' ? 6 : 4;
  // a fraction shows by its line what belongs to it, but not as the base of a power
  if (node.kind === 'binary') return node.sign === '/' ? 9 : BINDING[node.sign];
  return 10;
}
