// The parts of the sources that a function calls within its folder, from its own text on.
import { posix } from 'node:path';
import ts from 'typescript';

const parsed = new Map();

const isFunctionValue = ({ initializer }) =>
  initializer !== undefined &&
  (ts.isArrowFunction(initializer) || ts.isFunctionExpression(initializer));

/** Functions of a file by name, and where its imported names come from. */
function readFile(files, path) {
  const known = parsed.get(path);
  if (known !== undefined) return known;
  const file = ts.createSourceFile(path, files.get(path) ?? '', ts.ScriptTarget.Latest, true);
  const found = { functions: new Map(), imports: new Map() };
  for (const statement of file.statements) {
    if (ts.isFunctionDeclaration(statement) && statement.name !== undefined) {
      found.functions.set(statement.name.text, statement);
    }
    if (ts.isVariableStatement(statement)) {
      for (const one of statement.declarationList.declarations.filter(isFunctionValue)) {
        found.functions.set(one.name.getText(file), one);
      }
    }
    if (ts.isImportDeclaration(statement)) noteImports(found.imports, statement, path);
  }
  parsed.set(path, found);
  return found;
}

function noteImports(imports, { importClause, moduleSpecifier }, path) {
  const from = moduleSpecifier.text;
  const names = importClause?.namedBindings;
  if (!from.startsWith('.') || names === undefined || !ts.isNamedImports(names)) return;
  const target = posix.join(posix.dirname(path), from).replace(/\.js$/, '.ts');
  for (const { name, propertyName } of names.elements) {
    imports.set(name.text, [target, (propertyName ?? name).text]);
  }
}

const folderOf = (path) => path.split('/').slice(0, 2).join('/');

/**
 * The function of a file and all that it calls in the same folder, as syntax, in the order of the
 * calls. Functions that `hasPage` knows are left out: they have pages of their own.
 */
export function calledParts(files, path, name, hasPage) {
  const found = new Set();
  const visitFunction = (from, called) => {
    const { functions, imports } = readFile(files, from);
    const own = functions.get(called);
    if (own === undefined) {
      const [target, original] = imports.get(called) ?? [];
      if (target === undefined || hasPage(original)) return;
      if (folderOf(target) === folderOf(path)) visitFunction(target, original);
      return;
    }
    if (found.has(own)) return;
    found.add(own);
    const visit = (node) => {
      if (ts.isIdentifier(node) && node.text !== called) visitFunction(from, node.text);
      ts.forEachChild(node, visit);
    };
    ts.forEachChild(own, visit);
  };
  visitFunction(path, name);
  return [...found];
}
