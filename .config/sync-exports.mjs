// Writes the exports map and the build entries of package.json from the folders under src.
// Run it after adding or removing a folder: node .config/sync-exports.mjs
import { readdirSync, readFileSync, writeFileSync, existsSync } from 'node:fs';

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
