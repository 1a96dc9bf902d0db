// Collects every example of the doc comments and every fenced `ts` block of the pages, and writes
// them as tests: `expression //=> value` becomes an assertion. The tests are compiled by
// `npm run typecheck` and run by vitest. Run: node .config/collect-examples.mjs
import { mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const target = join(root, 'tests', 'generated');

function filesUnder(folder, ending) {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
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
      names.set(name, { subpath: `settline/${folder}`, isType });
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
function docExamples(path) {
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
function pageExamples(path) {
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

function importsFor(body, imports, names) {
  const text = body.join('\n');
  const given = imports.join('\n').replace(/from '[^']*'/g, '');
  const wanted = new Map();
  const { used, declared } = namesIn(text);
  const isWanted = (name) =>
    used.has(name) && !declared.has(name) && !new RegExp(`\\b${name}\\b`).test(given);
  for (const [name, { subpath, isType }] of names) {
    if (!isWanted(name)) continue;
    wanted.set(subpath, [...(wanted.get(subpath) ?? []), isType ? `type ${name}` : name]);
  }
  // the built-in site stands for `job` where an example does not say what its job is
  if (isWanted('job')) wanted.set('../cedar-court.js', ['job']);
  return [...wanted].map(([subpath, list]) => `import { ${list.join(', ')} } from '${subpath}';`);
}

function testFile(title, examples, names) {
  const imports = new Set(["import { expect, test } from 'vitest';"]);
  const tests = [];
  const counts = new Map();
  for (const { name, code } of examples) {
    const { imports: own, body, assertions } = withAssertions(code);
    for (const one of [...own, ...importsFor(body, own, names)]) imports.add(one);
    const index = (counts.get(name) ?? 0) + 1;
    counts.set(name, index);
    const label = JSON.stringify(`${title}: ${name}${index > 1 ? ` (${index})` : ''}`);
    const isAsync = body.some((line) => /\bawait\b/.test(line));
    tests.push(
      `test(${label}, ${isAsync ? 'async ' : ''}() => {\n  expect.assertions(${assertions});\n${body
        .map((line) => `  ${line}`)
        .join('\n')}\n});`,
    );
  }
  return `// Written by .config/collect-examples.mjs. Do not edit.\n${merge([...imports]).join('\n')}\n\n${tests.join('\n\n')}\n`;
}

/** One import line a module. */
function merge(lines) {
  const byModule = new Map();
  for (const line of lines) {
    const match = /^import \{([\s\S]*)\} from ('[^']+');?$/.exec(line);
    if (match === null) {
      byModule.set(line, null);
      continue;
    }
    const list = byModule.get(match[2]) ?? new Set();
    for (const name of match[1].split(',')) if (name.trim() !== '') list.add(name.trim());
    byModule.set(match[2], list);
  }
  return [...byModule].map(([from, list]) =>
    list === null ? from : `import { ${[...list].join(', ')} } from ${from};`,
  );
}

/** Writes the tests; returns how many examples there are. */
export function collectExamples() {
  const names = publicNames();
  rmSync(target, { recursive: true, force: true });
  mkdirSync(target, { recursive: true });
  const pages = [join(root, 'README.md'), ...filesUnder(join(root, 'docs'), '.md')];
  const sources = filesUnder(join(root, 'src'), '.ts').map((path) => [path, docExamples(path)]);
  const all = [...sources, ...pages.map((path) => [path, pageExamples(path)])];
  let count = 0;
  for (const [path, examples] of all) {
    if (examples.length === 0) continue;
    count += examples.length;
    const title = relative(root, path);
    const file = `${title.replace(/[/.]/g, '-')}.test.ts`;
    writeFileSync(join(target, file), testFile(title, examples, names));
  }
  return count;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  console.log(`${collectExamples()} examples collected`);
}
