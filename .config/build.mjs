// Builds what is missing or older than its sources, and nothing else.
//   node .config/build.mjs javascript     dist/**/*.js, dist/cjs/**/*.cjs, job.schema.json and the notices
//   node .config/build.mjs declarations   dist/**/*.d.ts and their maps; checks the types of the sources
//   node .config/build.mjs                both, and the declarations for CommonJS
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { writeJobSchema } from './job-schema.mjs';
import { writeNotices } from './notices.mjs';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const dist = join(root, 'dist');
const stamps = join(dist, '.built.json');

const BUILDERS = [
  'build.mjs',
  'built-in.mjs',
  'chunks.mjs',
  'job-schema.mjs',
  'notices.mjs',
  'pure-modules.mjs',
  'tsup.config.mjs',
];

const under = (folder, ending) =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith(ending))
    .sort();

/** One hash of the names of the sources, and one of all that the build reads. */
function hashes() {
  const sources = under(join(root, 'src'), '.ts').map((name) => join('src', name));
  const settings = [
    'package.json',
    'package-lock.json',
    'tsconfig.json',
    ...BUILDERS.map((name) => join('.config', name)),
  ];
  const names = createHash('sha256').update(sources.join('\n')).digest('hex');
  const content = createHash('sha256').update(names).update(process.version);
  for (const name of [...settings, ...sources]) content.update(readFileSync(join(root, name)));
  return { names, content: content.digest('hex') };
}

function run(tool, args) {
  const command = join(root, 'node_modules', tool);
  const { status } = spawnSync(command, args, { cwd: root, stdio: 'inherit' });
  if (status !== 0) process.exit(status ?? 1);
}

/** Declarations for CommonJS: those of the ES modules under other endings, with their maps. */
function copyDeclarations() {
  const cjs = join(dist, 'cjs');
  const names = under(dist, '.d.ts').filter((name) => !name.startsWith('cjs'));
  for (const name of names) {
    const source = join(dist, name);
    const target = join(cjs, name.replace(/\.d\.ts$/, '.d.cts'));
    mkdirSync(dirname(target), { recursive: true });
    const text = readFileSync(source, 'utf8')
      .replace(/(from |import\()(['"]\.[^'"]*)\.js(?=['"])/g, '$1$2.cjs')
      .replace(/(sourceMappingURL=.*)\.d\.ts\.map/, '$1.d.cts.map');
    writeFileSync(target, text);
    const map = JSON.parse(readFileSync(`${source}.map`, 'utf8'));
    map.file = map.file.replace(/\.d\.ts$/, '.d.cts');
    map.sources = map.sources.map((from) =>
      relative(dirname(target), join(dirname(source), from)).replaceAll('\\', '/'),
    );
    writeFileSync(`${target}.map`, JSON.stringify(map));
  }
}

/** Chunks carry a hash in their names: the old ones go first. */
async function makeJavascript() {
  for (const name of [...under(dist, '.js'), ...under(dist, '.cjs')]) rmSync(join(dist, name));
  run('.bin/tsup', ['--config', '.config/tsup.config.mjs']);
  const reports = ['metafile-esm.json', 'cjs/metafile-cjs.json'].map((name) => join(dist, name));
  writeNotices(
    root,
    reports.map((name) => JSON.parse(readFileSync(name, 'utf8'))),
  );
  for (const name of reports) rmSync(name);
  await writeJobSchema(root);
}

const MAKE = {
  javascript: makeJavascript,
  declarations: () => run('typescript-native/bin/tsc', ['-p', 'tsconfig.json']),
  commonjsDeclarations: copyDeclarations,
};

/** The files that lie beside `dist` may be taken away without it. */
const isThere = (part) =>
  part !== 'javascript' ||
  ['job.schema.json', 'THIRD-PARTY-NOTICES.md'].every((name) => existsSync(join(root, name)));

const { names, content } = hashes();
let built = existsSync(stamps) ? JSON.parse(readFileSync(stamps, 'utf8')) : {};
if (built.names !== names) {
  // a file came or went: nothing of it may stay behind
  rmSync(dist, { recursive: true, force: true });
  built = { names };
}
mkdirSync(dist, { recursive: true });
const wanted = process.argv.length > 2 ? process.argv.slice(2) : Object.keys(MAKE);
for (const part of wanted) {
  if (built[part] === content && isThere(part)) continue;
  await MAKE[part]();
  built[part] = content;
  writeFileSync(`${stamps}.new`, JSON.stringify(built));
  renameSync(`${stamps}.new`, stamps);
}
