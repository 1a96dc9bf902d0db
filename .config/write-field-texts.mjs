// Writes src/job/schema/field-texts.ts: the doc comment of every field of the job file, for its
// JSON Schema. Run it after such a comment was changed: npm run field-texts
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

const folder = join(dirname(fileURLToPath(import.meta.url)), '..', 'src', 'job', 'schema');

/** The texts of all fields, by interface and field; those of an interface that is extended come along. */
export function fieldTexts() {
  const texts = {};
  const bases = new Map();
  for (const name of readdirSync(folder)
    .filter((file) => file.endsWith('-input.ts'))
    .sort()) {
    const path = join(folder, name);
    const file = ts.createSourceFile(
      path,
      readFileSync(path, 'utf8'),
      ts.ScriptTarget.Latest,
      true,
    );
    for (const statement of file.statements) {
      if (!ts.isInterfaceDeclaration(statement)) continue;
      texts[statement.name.text] = Object.fromEntries(
        statement.members.map((member) => [member.name.text, textOf(member)]),
      );
      const names = (statement.heritageClauses ?? []).flatMap(({ types }) =>
        types.map(({ expression }) => expression.text),
      );
      if (names.length > 0) bases.set(statement.name.text, names);
    }
  }
  for (const [name, names] of bases) {
    texts[name] = Object.assign({}, ...names.map((base) => texts[base]), texts[name]);
  }
  return texts;
}

const textOf = (node) =>
  ts
    .getJSDocCommentsAndTags(node)
    .map((doc) => ts.getTextOfJSDocComment(doc.comment) ?? '')
    .join(' ')
    .replace(/\s+/g, ' ')
    .trim();

/** The source file that holds them. */
export function fieldTextsFile() {
  return `// Written by .config/write-field-texts.mjs from the doc comments beside it. Do not edit.

/** What each field of a job file means. Internal. */
export const FIELD_TEXTS: Readonly<Record<string, Readonly<Record<string, string>>>> = Object.freeze(
  ${JSON.stringify(fieldTexts(), null, 2)},
);
`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(join(folder, 'field-texts.ts'), fieldTextsFile());
}
