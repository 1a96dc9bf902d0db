// Collects every example of the doc comments and every fenced `ts` block of the pages, and writes
// them as tests: `expression //=> value` becomes an assertion. The tests are compiled by
// `npm run typecheck` and run by vitest; examples.mjs calls this where something changed.
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const target = join(root, 'tests', 'generated');

/** Pages that the documentation site generates from the doc comments. */
const generated = join(root, 'docs', 'api');

/** Files with an ending, in a folder and those in it. */
export function filesUnder(folder, ending) {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    if (path === generated || name.startsWith('.')) return [];
    if (statSync(path).isDirectory()) return filesUnder(path, ending);
    return name.endsWith(ending) ? [path] : [];
  });
}

/** Public names and the subpath that exports each. */
export function publicNames() {
  const names = new Map();
  for (const folder of readdirSync(join(root, 'src'))) {
    const index = join(root, 'src', folder, 'index.ts');
    let text;
    try {
      text = readFileSync(index, 'utf8');
    } catch {
      continue;
    }
    for (const { name, isType } of exportedNames(index, text)) {
      // a name that two folders pass on is imported from the first
      if (!names.has(name)) names.set(name, { subpath: `settline/${folder}`, isType });
    }
  }
  const rootIndex = join(root, 'src', 'index.ts');
  for (const { name, isType } of exportedNames(rootIndex, readFileSync(rootIndex, 'utf8'))) {
    if (!names.has(name)) names.set(name, { subpath: 'settline', isType });
  }
  return names;
}

function exportedNames(path, text) {
  const file = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  return file.statements.flatMap((statement) =>
    ts.isExportDeclaration(statement) && statement.exportClause
      ? statement.exportClause.elements.map((element) => ({
          name: element.name.text,
          isType: statement.isTypeOnly || element.isTypeOnly,
        }))
      : [],
  );
}

/** The examples in the doc comments of a source file. */
export function docExamples(path) {
  const text = readFileSync(path, 'utf8');
  const file = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  const examples = [];
  const visit = (node) => {
    for (const tag of ts.getJSDocTags(node)) {
      if (tag.tagName.text !== 'example' || tag.parent.parent !== node) continue;
      const raw = ts.getTextOfJSDocComment(tag.comment) ?? '';
      examples.push({ name: node.name?.getText(file) ?? 'example', code: raw });
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return examples;
}

/** The fenced `ts` blocks of a page. */
export function pageExamples(path) {
  const text = readFileSync(path, 'utf8');
  const blocks = [...text.matchAll(/^```ts\n([\s\S]*?)^```/gm)].map(([, code]) => code);
  return blocks.map((code, index) => ({ name: `block ${index + 1}`, code }));
}

/** Turns `expression //=> value` into assertions. */
function withAssertions(code) {
  const file = ts.createSourceFile('example.ts', code, ts.ScriptTarget.Latest, true);
  const imports = [];
  const body = [];
  let assertions = 0;
  file.statements.forEach((statement) => {
    const text = statement.getText(file);
    if (ts.isImportDeclaration(statement)) {
      imports.push(text);
      return;
    }
    const rest = code.slice(statement.end);
    const expected = /^;?[ \t]*(?:\n[ \t]*)?\/\/=>[ \t]*([^\n]*)/.exec(rest)?.[1];
    if (expected === undefined || !ts.isExpressionStatement(statement)) {
      body.push(text);
      return;
    }
    assertions += 1;
    body.push(`expect(${statement.expression.getText(file)}).toEqual(${expected});`);
  });
  return { imports, body, assertions };
}

/** Names that code uses, and names that it declares; those of properties are neither. */
function namesIn(code) {
  const [used, declared] = [new Set(), new Set()];
  const visit = (node) => {
    if (ts.isIdentifier(node)) {
      const { parent } = node;
      const isProperty =
        (ts.isPropertyAccessExpression(parent) && parent.name === node) ||
        (ts.isPropertyAssignment(parent) && parent.name === node) ||
        (ts.isPropertySignature(parent) && parent.name === node) ||
        (ts.isBindingElement(parent) && parent.propertyName === node);
      const isDeclared =
        (ts.isVariableDeclaration(parent) ||
          ts.isParameter(parent) ||
          ts.isBindingElement(parent) ||
          ts.isFunctionDeclaration(parent)) &&
        parent.name === node;
      if (isDeclared) declared.add(node.text);
      else if (!isProperty) used.add(node.text);
    }
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile('example.ts', code, ts.ScriptTarget.Latest, true));
  return { used, declared };
}

/** The names that code takes from elsewhere: its own imports, and the public names it leaves out. */
function importsOf(body, imports, names) {
  const taken = imports.flatMap(importedNames);
  const given = new Set(taken.map(({ name }) => name));
  const { used, declared } = namesIn(body.join('\n'));
  const isWanted = (name) => used.has(name) && !declared.has(name) && !given.has(name);
  for (const [name, { subpath, isType }] of names) {
    if (isWanted(name)) taken.push({ name, from: subpath, isType });
  }
  // the built-in site stands for `job` where an example does not say what its job is
  if (isWanted('job')) taken.push({ name: 'job', from: '../cedar-court.js', isType: false });
  return taken;
}

/** What an example uses and leaves to the reader to import: public names, and the site `job`. */
export function missingImports(code, names) {
  const { imports, body } = withAssertions(code);
  const given = new Set(imports.flatMap(importedNames).map(({ name }) => name));
  return importsOf(body, imports, names).filter(({ name }) => !given.has(name));
}

/** The names of one import declaration; other forms than `import { a, type B }` are refused. */
function importedNames(text) {
  const [statement] = ts.createSourceFile('import.ts', text, ts.ScriptTarget.Latest).statements;
  const clause = statement.importClause;
  const bindings = clause?.namedBindings;
  if (!bindings || !ts.isNamedImports(bindings)) throw new Error(`import names only: ${text}`);
  return bindings.elements.map((element) => {
    if (element.propertyName) throw new Error(`import without a second name: ${text}`);
    const isType = clause.phaseModifier === ts.SyntaxKind.TypeKeyword || element.isTypeOnly;
    return { name: element.name.text, from: statement.moduleSpecifier.text, isType };
  });
}

/** Gathers the imports of a file; a name that two modules export is given a second name. */
function importTable() {
  const modules = new Map([['vitest', new Map()]]);
  const owners = new Map();
  for (const name of ['expect', 'test']) take({ name, from: 'vitest', isType: false });

  /** Notes an import; returns the line an example needs where the name stands for another thing. */
  function take({ name, from, isType }) {
    const taken = owners.get(name) ?? [];
    if (!taken.includes(from)) owners.set(name, [...taken, from]);
    const place = owners.get(name).indexOf(from);
    const local = place === 0 ? name : `${name}${place + 1}`;
    const list = modules.get(from) ?? new Map();
    const known = list.get(name);
    list.set(name, { local, isType: isType && (known === undefined || known.isType) });
    modules.set(from, list);
    if (place === 0) return [];
    return [isType ? `type ${name} = ${local};` : `const ${name} = ${local};`];
  }

  const lines = () =>
    [...modules].map(([from, list]) => {
      const words = [...list].map(([name, { local, isType }]) => {
        const word = local === name ? name : `${name} as ${local}`;
        return isType ? `type ${word}` : word;
      });
      return `import { ${words.join(', ')} } from '${from}';`;
    });
  return { take, lines };
}

/** The test file of one folder. */
function testFile(pages, names) {
  const table = importTable();
  const tests = pages.flatMap(({ title, examples }) => {
    const counts = new Map();
    return examples.map(({ name, code }) => {
      const { imports, body, assertions } = withAssertions(code);
      const seconds = importsOf(body, imports, names).flatMap(table.take);
      const index = (counts.get(name) ?? 0) + 1;
      counts.set(name, index);
      const label = JSON.stringify(`${title}: ${name}${index > 1 ? ` (${index})` : ''}`);
      const isAsync = body.some((line) => /\bawait\b/.test(line));
      const lines = [`expect.assertions(${assertions});`, ...seconds, ...body];
      return `test(${label}, ${isAsync ? 'async ' : ''}() => {\n${lines
        .map((line) => `  ${line}`)
        .join('\n')}\n});`;
    });
  });
  const head = '// Written by .config/collect-examples.mjs. Do not edit.';
  return `${head}\n${table.lines().join('\n')}\n\n${tests.join('\n\n')}\n`;
}

/** The folder whose test file an example goes to: one under src, one under docs, or the root. */
function folderOf(title) {
  const parts = title.split('/').slice(0, -1);
  return parts.length === 0 ? 'readme' : parts.slice(0, 2).join('-');
}

/** Writes what changed and takes away what is no longer made, so that caches stay good. */
function writeAll(files) {
  mkdirSync(target, { recursive: true });
  for (const name of readdirSync(target)) if (!files.has(name)) rmSync(join(target, name));
  for (const [name, text] of files) {
    const path = join(target, name);
    if (existsSync(path) && readFileSync(path, 'utf8') === text) continue;
    writeFileSync(path, text);
  }
}

/** Writes the tests, one file a folder; returns how many examples there are. */
export function collectExamples() {
  const names = publicNames();
  const pages = [join(root, 'README.md'), ...filesUnder(join(root, 'docs'), '.md')];
  const sources = filesUnder(join(root, 'src'), '.ts').map((path) => [path, docExamples(path)]);
  const all = [...sources, ...pages.map((path) => [path, pageExamples(path)])];
  const folders = new Map();
  let count = 0;
  for (const [path, examples] of all) {
    if (examples.length === 0) continue;
    count += examples.length;
    const title = relative(root, path);
    const folder = folderOf(title);
    folders.set(folder, [...(folders.get(folder) ?? []), { title, examples }]);
  }
  writeAll(new Map([...folders].map(([name, list]) => [`${name}.test.ts`, testFile(list, names)])));
  return count;
}
