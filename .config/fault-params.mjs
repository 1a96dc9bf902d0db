// What `params` of a fault may hold: the keys that the sources give with each code.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { filesUnder } from './collect-examples.mjs';

const SRC = join(import.meta.dirname, '..', 'src');
/** What each key is. */
export const PARAMS = {
  area: 'the area that is shared',
  axis: 'x or y',
  choices: 'what may be written',
  count: 'how many faults are not listed',
  dimension: 'what kind of quantity it is',
  earlier: 'place of the first entry like it, counted from 0',
  earliest: 'the first day on which it may be',
  edge: 'an edge, counted as the message counts it',
  edges: 'how many edges there are',
  expected: 'what is asked for: a kind, a type or a number',
  expires: 'the last day on which it holds',
  figures: 'what is known of the figures of the plan',
  first: 'one of two that do not go together',
  follows: 'what the field follows from',
  from: 'one end of a stretch',
  gap: 'how far the tapes are from meeting',
  got: 'what was given',
  hole: 'a hole, counted as the message counts it',
  id: 'the id',
  key: 'the field that does not exist',
  least: 'the lower limit',
  leg: 'a stretch between two levels, counted from 0',
  meant: 'the name that is closest',
  missing: 'the fields that are missing',
  most: 'the upper limit',
  needed: 'the state that is needed',
  needs: 'the field that needs it',
  otherRing: 'the outline of `second`: 0, or a hole from 1',
  package: 'the package to install',
  pavement: 'the other pavement',
  percent: 'a slope or a share, in percent',
  planned: 'the figure that the job gives',
  point: 'a point, counted from 0',
  position: 'where in the text, counted from 0',
  readBy: 'version of the library that reads the plan',
  reason: 'why, as a word that does not change',
  ring: 'the outline of `first`: 0, or a hole from 1',
  round: 'the hole that lies round it',
  row: 'the row of the table, counted from 1',
  savedBy: 'version of the library that saved the plan',
  second: 'the other of the two',
  set: 'the set of tolerances',
  step: 'the step to round to',
  strips: 'how many strips there would be',
  test: 'the test that was named',
  text: 'the text that was given, cut after 40 characters',
  to: 'the other end of the stretch',
  unit: 'the unit',
};

const CODE = /^[A-Z][A-Z_]+[A-Z]$/;

/** Keys that a function of another file gives: `{ message, params } = otherKind(...)`. */
const FROM_ELSEWHERE = { unknownField: ['key', 'meant'], otherKind: ['expected', 'got'] };

const isCode = (node) => ts.isStringLiteralLike(node) && CODE.test(node.text);

/** The object literals that an expression may be. */
function literalsIn(node, named) {
  if (ts.isObjectLiteralExpression(node)) return [node];
  if (ts.isConditionalExpression(node)) {
    return [node.whenTrue, node.whenFalse].flatMap((one) => literalsIn(one, named));
  }
  if (ts.isAsExpression(node) || ts.isParenthesizedExpression(node)) {
    return literalsIn(node.expression, named);
  }
  return ts.isIdentifier(node) ? (named.get(node.text) ?? []) : [];
}

/** Keys of `params`, those of what is spread into it included. */
const keysOf = (node, named) =>
  literalsIn(node, named).flatMap(({ properties }) =>
    properties.flatMap((one) => {
      if (!ts.isSpreadAssignment(one)) return [one.name.text];
      const { expression } = one;
      const inside = ts.isCallExpression(expression) ? expression.arguments : [expression];
      return inside.flatMap((value) => keysOf(value, named));
    }),
  );

/** Object literals of a file by the name they are given. */
function namedLiterals(file) {
  const named = new Map();
  const visit = (node) => {
    if (ts.isVariableDeclaration(node) && node.initializer !== undefined) {
      if (ts.isIdentifier(node.name)) {
        const found = literalsIn(node.initializer, named);
        named.set(node.name.text, [...(named.get(node.name.text) ?? []), ...found]);
      }
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return named;
}

/** What a file gives with its codes: pairs of a code and the keys. */
function givenIn(path) {
  const file = ts.createSourceFile(path, readFileSync(path, 'utf8'), ts.ScriptTarget.Latest, true);
  const named = namedLiterals(file);
  const elsewhere = Object.entries(FROM_ELSEWHERE).flatMap(([name, keys]) =>
    file.text.includes(`{ message, params } = ${name}(`) ||
    file.text.includes(`{ message, meant, params } = ${name}(`)
      ? keys
      : [],
  );
  const found = [];
  const add = (code, node) => {
    const isShort = ts.isShorthandPropertyAssignment(node) || ts.isIdentifier(node);
    const own = keysOf(ts.isShorthandPropertyAssignment(node) ? node.name : node, named);
    found.push([code, isShort ? [...own, ...elsewhere] : own]);
  };
  const visit = (node) => {
    if (ts.isCallExpression(node)) {
      const name = node.expression.getText(file).split('.').at(-1);
      const at = node.arguments.findIndex(isCode);
      const params = node.arguments[at + (name === 'fail' ? 3 : 2)];
      if (at >= 0 && /^(?:fail|fault)$/.test(name) && params !== undefined) {
        add(node.arguments[at].text, params);
      }
    } else if (ts.isObjectLiteralExpression(node)) {
      const field = (key) => node.properties.find((one) => one.name?.getText(file) === key);
      const code = field('code')?.initializer;
      const params = field('params');
      const literal = code !== undefined && ts.isAsExpression(code) ? code.expression : code;
      if (literal !== undefined && isCode(literal) && params !== undefined) {
        add(literal.text, params.initializer ?? params);
      }
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

/** The keys of `params` by code, sorted. */
export function faultParams() {
  const keys = new Map();
  for (const [code, given] of filesUnder(SRC, '.ts').flatMap(givenIn)) {
    keys.set(code, new Set([...(keys.get(code) ?? []), ...given]));
  }
  const unexplained = [...keys.values()]
    .flatMap((given) => [...given])
    .find((key) => !(key in PARAMS));
  if (unexplained !== undefined) throw new Error(`say in PARAMS what ${unexplained} is`);
  return new Map([...keys].map(([code, given]) => [code, [...given].sort()]));
}
