/** A number, as written. */
export interface NumberNode {
  /** Kind of part. */
  readonly kind: 'number';
  /** The digits, such as `0.5`. */
  readonly text: string;
}

/** Words, such as `"pass"`. */
export interface WordsNode {
  /** Kind of part. */
  readonly kind: 'words';
  /** The words, without their quotes. */
  readonly text: string;
}

/** A symbol, or one item of a list. */
export interface NameNode {
  /** Kind of part. */
  readonly kind: 'name';
  /** The symbol, such as `t1` or `Vc`. */
  readonly name: string;
  /** The number of the item, counted from 1; null for the whole. */
  readonly index: FormulaNode | null;
}

/** A function of its arguments, such as `sqrt(x)`. */
export interface CallNode {
  /** Kind of part. */
  readonly kind: 'call';
  /** Name of the function, one of those that the grammar lists. */
  readonly name: FormulaFunction;
  /** The arguments. */
  readonly args: readonly FormulaNode[];
}

/** A sign or a negation. */
export interface UnaryNode {
  /** Kind of part. */
  readonly kind: 'unary';
  /** The sign before it. */
  readonly sign: '-' | 'not';
  /** What it applies to. */
  readonly operand: FormulaNode;
}

/** Two parts and the sign between them. */
export interface BinaryNode {
  /** Kind of part. */
  readonly kind: 'binary';
  /** The sign between them. */
  readonly sign: BinarySign;
  /** The part on the left. */
  readonly left: FormulaNode;
  /** The part on the right. */
  readonly right: FormulaNode;
}

/** One of two values, by a condition: `test ? yes : no`. */
export interface ChoiceNode {
  /** Kind of part. */
  readonly kind: 'choice';
  /** The condition. */
  readonly test: FormulaNode;
  /** The value where it holds. */
  readonly yes: FormulaNode;
  /** The value where it does not. */
  readonly no: FormulaNode;
}

/** A part of a formula. */
export type FormulaNode =
  NumberNode | WordsNode | NameNode | CallNode | UnaryNode | BinaryNode | ChoiceNode;

/** A formula: the symbol of the result and the expression that gives it. */
export interface Formula {
  /** Symbol of the result. */
  readonly result: string;
  /** The expression on the right of the sign of equality. */
  readonly expression: FormulaNode;
}

/** Functions that a formula may use. */
export const FORMULA_FUNCTIONS = [
  'sqrt',
  'sin',
  'cos',
  'tan',
  'asin',
  'acos',
  'atan',
  'log',
  'log10',
  'exp',
  'abs',
  'min',
  'max',
  'ceil',
  'floor',
  'round',
  'sum',
  'mean',
  'count',
] as const;

/** The name of a function that a formula may use. */
export type FormulaFunction = (typeof FORMULA_FUNCTIONS)[number];

/** A sign between two parts of a formula. */
export type BinarySign =
  '+' | '-' | '*' | '/' | '^' | '<' | '<=' | '>' | '>=' | '==' | '!=' | 'and' | 'or';

/** How closely each sign binds; a higher one is worked out first. Internal. */
export const BINDING: Readonly<Record<BinarySign, number>> = {
  or: 2,
  and: 3,
  '<': 5,
  '<=': 5,
  '>': 5,
  '>=': 5,
  '==': 5,
  '!=': 5,
  '+': 6,
  '-': 6,
  '*': 7,
  '/': 7,
  '^': 9,
};

/** How closely a condition, a negation and a minus sign bind. Internal. */
export const CHOICE_BINDING = 1;
export const NOT_BINDING = 4;
export const MINUS_BINDING = 8;
