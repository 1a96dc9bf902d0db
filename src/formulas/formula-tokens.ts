import { fault } from '../errors.js';
import { shown } from '../units/shown.js';

/** A number, name, sign or quoted words of a formula. Internal. */
export interface Token {
  readonly kind: 'number' | 'name' | 'words' | 'sign';
  readonly text: string;
  /** Characters before it. */
  readonly at: number;
}

const FORMS = [
  ['number', /\d+(?:\.\d+)?/y],
  ['words', /"[^"]*"/y],
  ['sign', /(?:and|or|not)\b|<=|>=|==|!=|[-+*/^()[\],?:<>=]/y],
  ['name', /[A-Za-z][A-Za-z0-9]*/y],
] as const;

/** Longer than any formula. */
const LONGEST = 2000;

/**
 * Takes a formula apart. Internal.
 *
 * @throws `FORMULA_INVALID`
 */
export function tokensOf(formula: string): Token[] {
  if (formula.length > LONGEST) {
    throw fault('FORMULA_INVALID', `a formula of more than ${LONGEST} characters`);
  }
  const tokens: Token[] = [];
  let at = 0;
  while (at < formula.length) {
    if (formula[at] === ' ') {
      at += 1;
      continue;
    }
    const token = tokenAt(formula, at);
    tokens.push(token);
    at += token.kind === 'words' ? token.text.length + 2 : token.text.length;
  }
  return tokens;
}

function tokenAt(formula: string, at: number): Token {
  for (const [kind, form] of FORMS) {
    form.lastIndex = at;
    const text = form.exec(formula)?.[0];
    if (text !== undefined) return { kind, text: kind === 'words' ? text.slice(1, -1) : text, at };
  }
  const words = `${shown(formula)}, character ${at + 1}: ${shown(formula[at])} has no meaning there`;
  throw fault('FORMULA_INVALID', words);
}
