// Writes the exports map of package.json from the folders under src, and the root index, which lists
// the names of all of them. Run it after adding or removing a folder or a public name: npm run exports
import { readdirSync, readFileSync, writeFileSync, existsSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import ts from 'typescript';

const folders = readdirSync('src', { withFileTypes: true })
  .filter((entry) => entry.isDirectory() && existsSync(`src/${entry.name}/index.ts`))
  .map(({ name }) => name)
  .sort();

/** Folders for one platform alone: they have a subpath, and the root leaves them out. */
const APART = ['node-threads'];

const target = (folder) => ({
  import: { types: `./dist/${folder}index.d.ts`, default: `./dist/${folder}index.js` },
  require: { types: `./dist/cjs/${folder}index.d.cts`, default: `./dist/cjs/${folder}index.cjs` },
});

const manifest = JSON.parse(readFileSync('package.json', 'utf8'));
manifest.exports = {
  '.': target(''),
  ...Object.fromEntries(folders.map((folder) => [`./${folder}`, target(`${folder}/`)])),
  './job.schema.json': './job.schema.json',
  './package.json': './package.json',
};
writeFileSync('package.json', `${JSON.stringify(manifest, null, 2)}\n`);

/** The names that an index exports, and the file that each comes from. */
function namesOf(index) {
  const file = ts.createSourceFile(
    index,
    readFileSync(index, 'utf8'),
    ts.ScriptTarget.Latest,
    true,
  );
  return file.statements.flatMap((statement) => {
    if (!ts.isExportDeclaration(statement) || !statement.exportClause) return [];
    const from = normalize(join(dirname(index), statement.moduleSpecifier.text));
    return statement.exportClause.elements.map((element) => ({
      name: element.name.text,
      isType: statement.isTypeOnly || element.isTypeOnly,
      from,
    }));
  });
}

const BESIDE = `export type { FormulaStep, ProcedureStep, Step, StepFields, StepInput, StepItem, StepValue, Worked } from './working.js';
`;

/** The root exports everything; a name that two folders pass on from one file is listed once. */
function rootIndex() {
  const owners = new Map();
  const lines = folders
    .filter((folder) => !APART.includes(folder))
    .map((folder) => {
      const words = namesOf(`src/${folder}/index.ts`).flatMap(({ name, isType, from }) => {
        const owner = owners.get(name);
        if (owner !== undefined && owner !== from) throw new Error(`two things are called ${name}`);
        owners.set(name, from);
        return owner === undefined ? [isType ? `type ${name}` : name] : [];
      });
      return `export { ${words.join(', ')} } from './${folder}/index.js';`;
    });
  return `// Written by .config/sync-exports.mjs from the index of every folder. Do not edit.\n${BESIDE}${lines.join('\n')}\n`;
}
writeFileSync('src/index.ts', rootIndex());
