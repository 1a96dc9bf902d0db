// Writes what each entry point of the package exports, names and types, from the built declarations:
// npm run api. Tests compare tests/api with the declarations; before a release, `--released` keeps the
// report as that of the last release.
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const dist = join(root, 'dist');
export const API_FOLDER = join(root, 'tests', 'api');

const printer = ts.createPrinter({ removeComments: true });
const parsed = new Map();

function fileAt(path) {
  const known = parsed.get(path);
  if (known !== undefined) return known;
  const file = ts.createSourceFile(path, readFileSync(path, 'utf8'), ts.ScriptTarget.Latest, true);
  parsed.set(path, file);
  return file;
}

const target = (from, specifier) => join(dirname(from), specifier.text).replace(/\.js$/, '.d.ts');

/** Names that a file passes on: the name outside, the name inside, and the file that it comes from. */
function passedOn(path) {
  return fileAt(path).statements.flatMap((statement) => {
    if (!ts.isExportDeclaration(statement) || !statement.exportClause) return [];
    const from = statement.moduleSpecifier ? target(path, statement.moduleSpecifier) : path;
    return statement.exportClause.elements.map(({ name, propertyName }) => ({
      name: name.text,
      inside: (propertyName ?? name).text,
      from,
    }));
  });
}

const namesOf = (statement) =>
  ts.isVariableStatement(statement)
    ? statement.declarationList.declarations.map(({ name }) => name.getText())
    : [statement.name?.text];

/** The declarations of a name, without their comments. */
function declarationsOf(name, path) {
  const file = fileAt(path);
  const own = file.statements.filter(
    (statement) => !ts.isExportDeclaration(statement) && namesOf(statement).includes(name),
  );
  if (own.length > 0) {
    return own.map((one) => printer.printNode(ts.EmitHint.Unspecified, one, file));
  }
  const through = passedOn(path).find((one) => one.name === name && one.from !== path);
  if (through !== undefined) return declarationsOf(through.inside, through.from);
  throw new Error(`${relative(root, path)}: no declaration of ${name}`);
}

/** The report of one entry point: every name in order, with its declaration. */
function reportOf(index) {
  const entries = passedOn(index)
    .map(({ name, inside, from }) => [name, declarationsOf(inside, from).join('\n')])
    .sort(([a], [b]) => (a < b ? -1 : 1));
  return `${entries.map(([name, text]) => `// ${name}\n${text}`).join('\n\n')}\n`;
}

/** The report of every entry point but the root, which exports the names of all of them. */
export function apiReports() {
  const folders = readdirSync(join(root, 'src'), { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && existsSync(join(root, 'src', entry.name, 'index.ts')))
    .map(({ name }) => name)
    .sort();
  return new Map(folders.map((name) => [name, reportOf(join(dist, name, 'index.d.ts'))]));
}

/** Every public name of a set of reports with its declaration. */
export const namesIn = (reports) =>
  new Map(
    [...reports.values()].flatMap((report) =>
      report.split(/^\/\/ /m).flatMap((part) => {
        const end = part.indexOf('\n');
        return end < 1 ? [] : [[part.slice(0, end), part.slice(end + 1).trim()]];
      }),
    ),
  );

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const folder = process.argv.includes('--released') ? join(API_FOLDER, 'released') : API_FOLDER;
  const old = existsSync(folder) ? readdirSync(folder).filter((name) => name.endsWith('.txt')) : [];
  for (const name of old) rmSync(join(folder, name));
  mkdirSync(folder, { recursive: true });
  for (const [name, report] of apiReports()) writeFileSync(join(folder, `${name}.txt`), report);
}
