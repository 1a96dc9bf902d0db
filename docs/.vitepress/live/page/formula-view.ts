import { attempt } from 'settline/errors';
import { readFormula, type FormulaNode } from 'settline/formulas';
import { makeElement } from './make-element.js';

const MATHML = 'http://www.w3.org/1998/Math/MathML';

function math(tag: string, ...parts: (Node | string)[]): Element {
  const element = document.createElementNS(MATHML, tag);
  element.append(...parts);
  return element;
}

const operator = (sign: string): Element => math('mo', sign);

const row = (...parts: Element[]): Element => math('mrow', ...parts);

const bracketed = (part: Element, [open, close]: readonly [string, string] = ['(', ')']): Element =>
  row(operator(open), part, operator(close));

/** A symbol: its first letter, and what follows as a subscript. */
function symbol(name: string): Element {
  if (name === 'pi') return math('mi', '\u03c0');
  const [, head = name, tail = ''] = /^([A-Z]{2,}|[A-Za-z])(.*)$/.exec(name) ?? [];
  if (tail === '') return math('mi', head);
  return math('msub', math('mi', head), math(/^\d+$/.test(tail) ? 'mn' : 'mtext', tail));
}

const SIGNS: Readonly<Record<string, string>> = {
  '*': '\u00b7',
  '-': '\u2212',
  '<=': '\u2264',
  '>=': '\u2265',
  '==': '=',
  '!=': '\u2260',
};

/** How closely a sign binds; a higher number binds closer. */
const BINDING: Readonly<Record<string, number>> = { or: 1, and: 2, '+': 4, '-': 4, '*': 5, '^': 7 };
const COMPARED = 3;
const NEGATED = 5;
const CLOSEST = 9;

function bindingOf(node: FormulaNode): number {
  if (node.kind === 'choice') return 0;
  if (node.kind === 'unary') return NEGATED;
  if (node.kind !== 'binary' || node.sign === '/') return CLOSEST;
  return BINDING[node.sign] ?? COMPARED;
}

/** In brackets where it binds less closely than its surroundings ask. */
const within = (node: FormulaNode, least: number): Element =>
  bindingOf(node) < least ? bracketed(drawn(node)) : drawn(node);

function list(args: readonly FormulaNode[]): Element {
  const parts = args.flatMap((arg, index) =>
    index === 0 ? [drawn(arg)] : [operator(','), drawn(arg)],
  );
  return row(...parts);
}

function called(name: string, args: readonly FormulaNode[]): Element {
  if (name === 'sqrt') return math('msqrt', list(args));
  if (name === 'abs') return bracketed(list(args), ['|', '|']);
  if (name === 'ceil') return bracketed(list(args), ['\u2308', '\u2309']);
  if (name === 'floor') return bracketed(list(args), ['\u230a', '\u230b']);
  return row(math('mi', name), bracketed(list(args)));
}

function joined({ sign, left, right }: FormulaNode & { readonly kind: 'binary' }): Element {
  if (sign === '/') return math('mfrac', drawn(left), drawn(right));
  if (sign === '^') return math('msup', within(left, CLOSEST + 1), drawn(right));
  const binding = BINDING[sign] ?? COMPARED;
  const between = /[a-z]/.test(sign) ? math('mtext', ` ${sign} `) : operator(SIGNS[sign] ?? sign);
  return row(within(left, binding), between, within(right, binding + 1));
}

function drawn(node: FormulaNode): Element {
  switch (node.kind) {
    case 'number':
      return math('mn', node.text);
    case 'words':
      return math('mtext', node.text);
    case 'name':
      return node.index === null
        ? symbol(node.name)
        : math('msub', symbol(node.name), bracketed(drawn(node.index), ['[', ']']));
    case 'call':
      return called(node.name, node.args);
    case 'unary':
      return node.sign === '-'
        ? row(operator('\u2212'), within(node.operand, NEGATED))
        : row(math('mtext', 'not '), within(node.operand, CLOSEST));
    case 'choice':
      return row(
        drawn(node.yes),
        math('mtext', ' if '),
        drawn(node.test),
        math('mtext', ', else '),
        drawn(node.no),
      );
    case 'binary':
      return joined(node);
  }
}

/** A formula of the working, typeset; as text where it is not in the grammar. */
export function formulaElement(formula: string): Element {
  const reading = attempt(() => readFormula(formula));
  if (!reading.ok) return makeElement('code', { text: formula });
  const { result, expression } = reading.value;
  const element = math('math', row(symbol(result), operator('='), drawn(expression)));
  element.setAttribute('alttext', formula);
  return element;
}
