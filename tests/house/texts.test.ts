// What an editor shows on hover: every field of every public type has a text of its own.
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import ts from 'typescript';
import { indexFiles, src } from './source-files.js';

/** The public types of an index, with the file that declares each. */
function publicTypes(index: string): { readonly name: string; readonly path: string }[] {
  const file = parsed(join(src, index));
  return file.statements.flatMap((statement) => {
    if (!ts.isExportDeclaration(statement) || statement.exportClause === undefined) return [];
    if (!ts.isNamedExports(statement.exportClause)) return [];
    const from = (statement.moduleSpecifier as ts.StringLiteral).text.replace(/\.js$/, '.ts');
    return statement.exportClause.elements.map((element) => ({
      name: (element.propertyName ?? element.name).text,
      path: join(src, dirname(index), from),
    }));
  });
}

const cache = new Map<string, ts.SourceFile>();

function parsed(path: string): ts.SourceFile {
  const known = cache.get(path);
  if (known !== undefined) return known;
  const text = readFileSync(path, 'utf8');
  const file = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  cache.set(path, file);
  return file;
}

/** The file that a type is passed on from. */
function reExported(file: ts.SourceFile, path: string, name: string): string | undefined {
  for (const statement of file.statements) {
    if (!ts.isExportDeclaration(statement) || statement.moduleSpecifier === undefined) continue;
    const clause = statement.exportClause;
    if (clause === undefined || !ts.isNamedExports(clause)) continue;
    if (!clause.elements.some((element) => element.name.text === name)) continue;
    const from = (statement.moduleSpecifier as ts.StringLiteral).text.replace(/\.js$/, '.ts');
    return join(dirname(path), from);
  }
  return undefined;
}

/** Fields of a type declaration that have no doc comment, however deep. */
function bareFields(path: string, name: string): string[] {
  const file = parsed(path);
  const elsewhere = reExported(file, path, name);
  if (elsewhere !== undefined) return bareFields(elsewhere, name);
  const bare: string[] = [];
  const visit = (node: ts.Node, within: string): void => {
    let here = within;
    if (ts.isPropertySignature(node) || ts.isMethodSignature(node)) {
      here = `${within}.${node.name.getText(file)}`;
      const texts = ts.getJSDocCommentsAndTags(node).filter(ts.isJSDoc);
      const words = texts
        .map((doc) => ts.getTextOfJSDocComment(doc.comment) ?? '')
        .join('')
        .trim();
      if (words === '') bare.push(here);
    }
    ts.forEachChild(node, (child) => {
      visit(child, here);
    });
  };
  for (const statement of file.statements) {
    const isType = ts.isInterfaceDeclaration(statement) || ts.isTypeAliasDeclaration(statement);
    if (isType && statement.name.text === name) visit(statement, name);
  }
  return bare;
}

describe('every field of a public type has a text', () => {
  test.each(indexFiles)('%s', (index) => {
    const bare = publicTypes(index).flatMap(({ name, path }) => bareFields(path, name));
    expect([...new Set(bare)]).toEqual([]);
  });
});

test('the count sees fields', () => {
  const all = indexFiles.flatMap(publicTypes);
  expect(all.length).toBeGreaterThan(300);
});
