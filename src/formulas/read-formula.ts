import { fault, type SettlineError } from '../errors.js';
import { shown } from '../units/shown.js';
import {
  BINDING,
  CHOICE_BINDING,
  FORMULA_FUNCTIONS,
  MINUS_BINDING,
  NOT_BINDING,
  type BinarySign,
  type Formula,
  type FormulaFunction,
  type FormulaNode,
} from './formula-node.js';
import { tokensOf, type Token } from './formula-tokens.js';

/** More parts inside each other than any formula has. */
const DEEPEST = 60;

/**
 * Reads a formula of the working into its parts, to typeset it or to work it out in another program.
 * The grammar is in `docs/reference/formulas.md`.
 *
 * @param formula - the formula, such as `'E = D + a'`
 * @returns the symbol of the result and the expression
 * @throws `WRONG_TYPE` if it is not a text, `FORMULA_INVALID` if the grammar does not know it
 * @source derived
 * @example
 * const { result, expression } = readFormula('E = D + a');
 * result //=> 'E'
 * expression.kind //=> 'binary'
 */
export function readFormula(formula: string): Formula {
  if (typeof formula !== 'string') {
    throw fault('WRONG_TYPE', `expected a formula as text, got ${shown(formula)}`);
  }
  const reader = new Reader(formula, tokensOf(formula));
  const result = reader.name();
  reader.take('=');
  const expression = reader.expression(0, 0);
  reader.end();
  return { result, expression };
}

class Reader {
  readonly #formula: string;
  readonly #tokens: readonly Token[];
  #at = 0;

  constructor(formula: string, tokens: readonly Token[]) {
    this.#formula = formula;
    this.#tokens = tokens;
  }

  name(): string {
    const token = this.#next();
    if (token?.kind !== 'name') throw this.#wrong(token);
    return token.text;
  }

  take(sign: string): void {
    const token = this.#next();
    if (token?.kind !== 'sign' || token.text !== sign) throw this.#wrong(token);
  }

  end(): void {
    if (this.#at < this.#tokens.length) throw this.#wrong(this.#tokens[this.#at]);
  }

  /** Parts joined by signs that bind more closely than `least`. */
  expression(least: number, depth: number): FormulaNode {
    if (depth > DEEPEST) {
      throw fault('FORMULA_INVALID', `more than ${DEEPEST} parts inside each other`);
    }
    let left = this.#operand(depth);
    for (;;) {
      const sign = this.#binarySign();
      if (sign !== undefined && BINDING[sign] > least) {
        this.#at += 1;
        // a power of a power is worked out from the right
        const next = sign === '^' ? BINDING[sign] - 1 : BINDING[sign];
        left = { kind: 'binary', sign, left, right: this.expression(next, depth + 1) };
      } else if (this.#isNext('?') && CHOICE_BINDING > least) {
        left = this.#choice(left, depth);
      } else {
        return left;
      }
    }
  }

  #choice(test: FormulaNode, depth: number): FormulaNode {
    this.take('?');
    const yes = this.expression(0, depth + 1);
    this.take(':');
    return { kind: 'choice', test, yes, no: this.expression(0, depth + 1) };
  }

  #operand(depth: number): FormulaNode {
    const token = this.#next();
    switch (token?.kind) {
      case 'number':
      case 'words':
        return { kind: token.kind, text: token.text };
      case 'name':
        return this.#named(token.text, depth);
      case 'sign':
        return this.#signed(token, depth);
      case undefined:
        throw this.#wrong(token);
    }
  }

  #signed(token: Token, depth: number): FormulaNode {
    if (token.text === '-' || token.text === 'not') {
      const binding = token.text === '-' ? MINUS_BINDING : NOT_BINDING;
      const operand = this.expression(binding, depth + 1);
      return { kind: 'unary', sign: token.text, operand };
    }
    if (token.text !== '(') throw this.#wrong(token);
    const inside = this.expression(0, depth + 1);
    this.take(')');
    return inside;
  }

  #named(name: string, depth: number): FormulaNode {
    if (this.#isNext('(')) return this.#call(name, depth);
    if (!this.#isNext('[')) return { kind: 'name', name, index: null };
    this.take('[');
    const index = this.expression(0, depth + 1);
    this.take(']');
    return { kind: 'name', name, index };
  }

  #call(name: string, depth: number): FormulaNode {
    if (!isFunction(name)) {
      const words = `${shown(this.#formula)}: no function ${shown(name)}; use ${FORMULA_FUNCTIONS.join(', ')}`;
      throw fault('FORMULA_INVALID', words);
    }
    this.take('(');
    const args = [this.expression(0, depth + 1)];
    while (this.#isNext(',')) {
      this.take(',');
      args.push(this.expression(0, depth + 1));
    }
    this.take(')');
    return { kind: 'call', name, args };
  }

  #next(): Token | undefined {
    const token = this.#tokens[this.#at];
    this.#at += 1;
    return token;
  }

  #isNext(sign: string): boolean {
    const token = this.#tokens[this.#at];
    return token?.kind === 'sign' && token.text === sign;
  }

  #binarySign(): BinarySign | undefined {
    const token = this.#tokens[this.#at];
    return token?.kind === 'sign' && isBinarySign(token.text) ? token.text : undefined;
  }

  #wrong(token: Token | undefined): SettlineError {
    const found = token === undefined ? 'the formula ends there' : `got ${shown(token.text)}`;
    const place = token === undefined ? this.#formula.length + 1 : token.at + 1;
    return fault('FORMULA_INVALID', `${shown(this.#formula)}, character ${place}: ${found}`);
  }
}

const isFunction = (name: string): name is FormulaFunction =>
  (FORMULA_FUNCTIONS as readonly string[]).includes(name);

const isBinarySign = (text: string): text is BinarySign => Object.hasOwn(BINDING, text);
