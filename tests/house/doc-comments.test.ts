// Every exported function, class and type of the sources has a doc comment, and it says nothing that
// the compiler says already.
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import ts from 'typescript';
import { filesUnder, src } from './source-files.js';

type Declared =
  ts.FunctionDeclaration | ts.ClassDeclaration | ts.InterfaceDeclaration | ts.TypeAliasDeclaration;

const isDeclared = (node: ts.Node): node is Declared =>
  ts.isFunctionDeclaration(node) ||
  ts.isClassDeclaration(node) ||
  ts.isInterfaceDeclaration(node) ||
  ts.isTypeAliasDeclaration(node);

/** Exported names of a text without a doc comment; of an overloaded function the first place counts. */
function uncommented(text: string): string[] {
  const file = ts.createSourceFile('source.ts', text, ts.ScriptTarget.Latest, true);
  const names = new Map<string, boolean>();
  for (const statement of file.statements) {
    if (!isDeclared(statement)) continue;
    const flags = ts.getCombinedModifierFlags(statement);
    const name = statement.name?.getText() ?? '';
    if ((flags & ts.ModifierFlags.Export) === 0 || names.has(name)) continue;
    names.set(name, ts.getJSDocCommentsAndTags(statement).length > 0);
  }
  return [...names].filter(([, has]) => !has).map(([name]) => name);
}

/** Comments with tags that are no doc comments, and tags that repeat a type. */
const badTags = (text: string): string[] =>
  [...text.matchAll(/\/\*(?!\*)\s*\*?\s*@\w+|\* @(?:param|returns|throws|type)\s+\{(?!@)/g)].map(
    ([found]) => found,
  );

test('the rules see what they are for', () => {
  expect(uncommented('export function a() {}\nexport type B = 1;\ninterface C {}')).toEqual([
    'a',
    'B',
  ]);
  expect(uncommented('/** A. */\nexport function a(): void;\nexport function a() {}')).toEqual([]);
  expect(badTags('/* @param a */ /** @param a - one */')).toEqual(['/* @param']);
  expect(badTags('/** @returns {@link B} */\n/**\n * @param {string} a - b\n */')).toEqual([
    '* @param {',
  ]);
});

test('what is exported has a doc comment, without types', () => {
  const files = filesUnder(src, '.ts').map((path) => [path, readFileSync(path, 'utf8')] as const);
  expect(files.length).toBeGreaterThan(500);
  const missing = files.flatMap(([path, text]) =>
    [...uncommented(text), ...badTags(text)].map((name) => `${path}: ${name}`),
  );
  expect(missing).toEqual([]);
});
