export { readFormula } from './read-formula.js';
export { formulaTeX } from './formula-tex.js';
export { FORMULA_FUNCTIONS } from './formula-node.js';
export type {
  BinaryNode,
  BinarySign,
  CallNode,
  ChoiceNode,
  Formula,
  FormulaFunction,
  FormulaNode,
  NameNode,
  NumberNode,
  UnaryNode,
  WordsNode,
} from './formula-node.js';
