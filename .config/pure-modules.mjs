// Makes what a module calculates when it loads (tables, shapes, frozen lists) droppable by bundlers:
// every such constant is wrapped in a function call marked as pure. A chunk of the build holds many
// modules, and "sideEffects": false speaks of whole files only.
import { readFileSync } from 'node:fs';
import ts from 'typescript';

/** Calls, reads of properties and spreads may do something, for all that a bundler knows. */
const isUncertain = (node) =>
  ts.isCallExpression(node) ||
  ts.isNewExpression(node) ||
  ts.isPropertyAccessExpression(node) ||
  ts.isElementAccessExpression(node) ||
  ts.isSpreadAssignment(node) ||
  ts.isSpreadElement(node) ||
  ts.isTaggedTemplateExpression(node);

function actsOnLoad(node) {
  if (ts.isFunctionLike(node) || ts.isClassLike(node) || ts.isTypeNode(node)) return false;
  return isUncertain(node) || ts.forEachChild(node, (child) => actsOnLoad(child) || undefined);
}

const MAY_STAND = [
  ts.isVariableStatement,
  ts.isFunctionDeclaration,
  ts.isClassDeclaration,
  ts.isImportDeclaration,
  ts.isExportDeclaration,
  ts.isInterfaceDeclaration,
  ts.isTypeAliasDeclaration,
];

/** The text of a module with its constants wrapped; a statement that acts on load is refused. */
export function withPureConstants(path, text) {
  const file = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  const places = [];
  for (const statement of file.statements) {
    if (!MAY_STAND.some((is) => is(statement))) {
      throw new Error(`${path} does something when it loads: ${statement.getText(file)}`);
    }
    if (!ts.isVariableStatement(statement)) continue;
    for (const { initializer } of statement.declarationList.declarations) {
      if (initializer === undefined || !actsOnLoad(initializer)) continue;
      places.push([initializer.getStart(file), initializer.getEnd()]);
    }
  }
  let made = text;
  for (const [from, to] of places.reverse()) {
    const wrapped = `/* @__PURE__ */ (() => (${made.slice(from, to)}))()`;
    made = made.slice(0, from) + wrapped + made.slice(to);
  }
  return made;
}

/** The plugin for esbuild. */
export const pureModules = {
  name: 'pure modules',
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]src[\\/].*\.ts$/ }, ({ path }) => {
      if (path.includes('node_modules')) return undefined;
      return { contents: withPureConstants(path, readFileSync(path, 'utf8')), loader: 'ts' };
    });
  },
};
