// What the public functions take and return: named types with a text on every field, and null in a
// result for what is not there.
import { readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { describe, expect, test } from 'vitest';
import ts from 'typescript';
import { indexFiles, src } from './source-files.js';

const files = new Map<string, ts.SourceFile>();

function parsed(path: string): ts.SourceFile {
  const known = files.get(path);
  if (known !== undefined) return known;
  const text = readFileSync(path, 'utf8');
  const file = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  files.set(path, file);
  return file;
}

interface Named {
  readonly name: string;
  readonly path: string;
}

const fromOf = (statement: ts.ImportDeclaration | ts.ExportDeclaration, path: string): string => {
  const { text } = statement.moduleSpecifier as ts.StringLiteral;
  return text.startsWith('.') ? join(dirname(path), text.replace(/\.js$/, '.ts')) : text;
};

/** The public names of an index that are no types, with the file of each. */
const publicValues = (index: string): Named[] =>
  parsed(join(src, index)).statements.flatMap((statement) => {
    if (!ts.isExportDeclaration(statement) || statement.isTypeOnly) return [];
    const clause = statement.exportClause;
    if (clause === undefined || !ts.isNamedExports(clause)) return [];
    const values = clause.elements.filter((element) => !element.isTypeOnly);
    return values.map(({ name }) => ({
      name: name.text,
      path: fromOf(statement, join(src, index)),
    }));
  });

/** Every signature of the public functions of an index; of an overloaded one those that show. */
const signatures = indexFiles.flatMap((index) =>
  publicValues(index).flatMap(({ name, path }) => {
    const all = parsed(path)
      .statements.filter(ts.isFunctionDeclaration)
      .filter((one) => one.name?.text === name);
    const shown = all.length > 1 ? all.filter(({ body }) => body === undefined) : all;
    return shown.map((declaration) => ({ name, path, declaration }));
  }),
);

/** Object types that are written where they are used. */
function inlineTypes(node: ts.Node): string[] {
  const found: string[] = [];
  const visit = (part: ts.Node): void => {
    if (ts.isTypeLiteralNode(part)) found.push(part.getText());
    else ts.forEachChild(part, visit);
  };
  visit(node);
  return found;
}

describe('what a public function takes and returns has a name', () => {
  test('there are some', () => {
    expect(signatures.length).toBeGreaterThan(180);
  });

  test.each(signatures)('$name', ({ declaration: { parameters, type, typeParameters } }) => {
    const types = [...parameters.map((one) => one.type), type, ...(typeParameters ?? [])];
    expect(types.flatMap((one) => (one === undefined ? ['none'] : inlineTypes(one)))).toEqual([]);
  });
});

/** A type by its name: declared in a file, or imported there from another. */
function findType(name: string, path: string): { declared: ts.Node; path: string } | undefined {
  for (const statement of parsed(path).statements) {
    const isDeclared =
      (ts.isInterfaceDeclaration(statement) || ts.isTypeAliasDeclaration(statement)) &&
      statement.name.text === name;
    if (isDeclared) return { declared: statement, path };
    const clause = passedOn(statement)?.find((element) => element.name.text === name);
    if (clause === undefined) continue;
    const from = fromOf(statement as ts.ImportDeclaration, path);
    return from.startsWith('/')
      ? findType((clause.propertyName ?? clause.name).text, from)
      : undefined;
  }
  return undefined;
}

function passedOn(statement: ts.Statement) {
  const names = ts.isImportDeclaration(statement)
    ? statement.importClause?.namedBindings
    : ts.isExportDeclaration(statement) && statement.moduleSpecifier !== undefined
      ? statement.exportClause
      : undefined;
  return names !== undefined && (ts.isNamedImports(names) || ts.isNamedExports(names))
    ? [...names.elements]
    : undefined;
}

/** What callers hand in and get back as it was, and what is as free as its language has it. */
const isTaken = (name: string): boolean =>
  /(?:Input|Options)$/.test(name) || name === 'JobFile' || name === 'SoilFactors';

/** Fields of what a type names, however deep, that may be missing or undefined. */
function looseFields(node: ts.Node, path: string, seen = new Set<string>()): string[] {
  const found: string[] = [];
  const visit = (part: ts.Node): void => {
    const isLoose =
      (ts.isPropertySignature(part) && part.questionToken !== undefined) ||
      part.kind === ts.SyntaxKind.UndefinedKeyword;
    if (isLoose) found.push(`${relative(src, path)}: ${part.getText()}`);
    const name = nameOf(part);
    const key = `${path} ${name}`;
    if (name !== undefined && !isTaken(name) && !seen.has(key)) {
      seen.add(key);
      const type = findType(name, path);
      if (type !== undefined) found.push(...looseFields(type.declared, type.path, seen));
    }
    ts.forEachChild(part, visit);
  };
  visit(node);
  return found;
}

const nameOf = (part: ts.Node): string | undefined => {
  if (ts.isTypeReferenceNode(part)) return part.typeName.getText();
  return ts.isExpressionWithTypeArguments(part) ? part.expression.getText() : undefined;
};

describe('a result says null for what is not there, and has all of its fields', () => {
  test.each(signatures)('$name', ({ declaration: { type }, path }) => {
    expect(type === undefined ? ['no type'] : looseFields(type, path)).toEqual([]);
  });
});
