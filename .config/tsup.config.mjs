// The two builds of the package. Both come in chunks: what two folders share is a file of its own, so
// that one import loads few files, and none that it does not need. Started by build.mjs.
import { readFileSync } from 'node:fs';
import { BUILT_IN } from './built-in.mjs';
import { fewerChunks } from './chunks.mjs';
import { pureModules } from './pure-modules.mjs';

const { exports, dependencies } = JSON.parse(readFileSync('package.json', 'utf8'));
/** The root and every folder, as the exports map lists them. */
const entry = Object.fromEntries(
  Object.keys(exports)
    .filter((name) => /^\.(?:\/[a-z-]+)?$/.test(name))
    .map((name) => `${name}/index`.slice(2))
    .map((name) => [name, `src/${name}.ts`]),
);
// a chunk of its own: who does not ask for the schema of zod takes nothing of it
entry['job/read/zod-schema'] = 'src/job/read/zod-schema.ts';
const external = Object.keys(dependencies).filter((name) => !BUILT_IN.includes(name));
const laidTogether = await fewerChunks(entry, { external, plugins: [pureModules] });
const build = (format, outDir) => ({
  config: false,
  entry,
  outDir,
  format: [format],
  splitting: true,
  noExternal: BUILT_IN,
  esbuildPlugins: [laidTogether, pureModules],
  esbuildOptions(options) {
    // an import that only brings a module along is meant
    options.logOverride = { 'ignored-bare-import': 'silent' };
  },
  metafile: true,
  target: 'es2022',
  // how a file of the package finds another by its public name
  define: format === 'cjs' ? { 'import.meta.resolve': 'require.resolve' } : {},
  // the declarations are made by the compiler: see build.mjs
  dts: false,
  clean: false,
  silent: true,
});

export default [build('esm', 'dist'), build('cjs', 'dist/cjs')];
