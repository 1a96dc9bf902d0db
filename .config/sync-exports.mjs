// Writes the exports map and the build entries of package.json from the folders under src, and the
// root index, which lists the names of all of them. Run it after adding or removing a folder or a
// public name: npm run exports
import { readdirSync, readFileSync, writeFileSync, existsSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import ts from 'typescript';

const folders = readdirSync('src', { withFileTypes: true })
  .filter((entry) => entry.isDirectory() && existsSync(`src/${entry.name}/index.ts`))
  .map(({ name }) => name)
  .sort();

const target = (folder) => ({
  import: { types: `./dist/${folder}index.d.ts`, default: `./dist/${folder}index.js` },
  require: { types: `./dist/cjs/${folder}index.d.cts`, default: `./dist/cjs/${folder}index.cjs` },
});

const entries = { index: 'src/index.ts' };
for (const folder of folders) entries[`${folder}/index`] = `src/${folder}/index.ts`;

const manifest = JSON.parse(readFileSync('package.json', 'utf8'));
manifest.exports = {
  '.': target(''),
  ...Object.fromEntries(folders.map((folder) => [`./${folder}`, target(`${folder}/`)])),
  './package.json': './package.json',
};
// the declarations are made by the compiler: see build.mjs
const shared = { target: 'es2022', dts: false, clean: false, silent: true };
manifest.tsup = [
  // ESM: every module stays a file of its own, so that one import pulls one concept
  { entry: ['src/**/*.ts'], outDir: 'dist', format: ['esm'], bundle: false, ...shared },
  // CJS: one file per folder and shared chunks; packages that are ES modules only are built in
  {
    entry: entries,
    outDir: 'dist/cjs',
    format: ['cjs'],
    splitting: true,
    noExternal: ['clipper2-ts', 'delaunator', 'leven', 'robust-predicates'],
    ...shared,
  },
];
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

const BESIDE = `export { attempt, type Outcome } from './attempt.js';
export {
  ERROR_CODES,
  isSettlineError,
  pathText,
  SettlineError,
  type ErrorCode,
  type FieldPath,
  type Issue,
} from './errors.js';
export type { Step, StepInput, StepValue, Worked } from './working.js';
`;

/** The root exports everything; a name that two folders pass on from one file is listed once. */
function rootIndex() {
  const owners = new Map();
  const lines = folders.map((folder) => {
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
