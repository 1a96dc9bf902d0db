// Builds what is missing or older than its sources, and nothing else.
//   node .config/build.mjs javascript     dist/**/*.js and dist/cjs/**/*.cjs
//   node .config/build.mjs declarations   dist/**/*.d.ts; checks the types of the sources
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
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const dist = join(root, 'dist');
const stamps = join(dist, '.built.json');

const under = (folder, ending) =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith(ending))
    .sort();

/** One hash of the names of the sources, and one of all that the build reads. */
function hashes() {
  const sources = under(join(root, 'src'), '.ts').map((name) => join('src', name));
  const settings = ['package.json', 'package-lock.json', 'tsconfig.json', '.config/build.mjs'];
  const names = createHash('sha256').update(sources.join('\n')).digest('hex');
  const content = createHash('sha256').update(names).update(process.version);
  for (const name of [...settings, ...sources]) content.update(readFileSync(join(root, name)));
  return { names, content: content.digest('hex') };
}

function run(tool, args) {
  const command = join(root, 'node_modules', '.bin', tool);
  const { status } = spawnSync(command, args, { cwd: root, stdio: 'inherit' });
  if (status !== 0) process.exit(status ?? 1);
}

/** Declarations for CommonJS: those of the ES modules under other endings. */
function copyDeclarations() {
  const cjs = join(dist, 'cjs');
  const names = under(dist, '.d.ts').filter((name) => !name.startsWith('cjs'));
  for (const name of names) {
    const text = readFileSync(join(dist, name), 'utf8');
    const target = join(cjs, name.replace(/\.d\.ts$/, '.d.cts'));
    mkdirSync(dirname(target), { recursive: true });
    writeFileSync(target, text.replace(/(from |import\()(['"]\.[^'"]*)\.js(?=['"])/g, '$1$2.cjs'));
  }
}

/** Chunks for CommonJS carry a hash in their names: the old ones go first. */
function makeJavascript() {
  for (const name of under(dist, '.cjs')) rmSync(join(dist, name));
  run('tsup', []);
}

const MAKE = {
  javascript: makeJavascript,
  declarations: () => run('tsc', ['-p', 'tsconfig.json']),
  commonjsDeclarations: copyDeclarations,
};

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
  if (built[part] === content) continue;
  MAKE[part]();
  built[part] = content;
  writeFileSync(`${stamps}.new`, JSON.stringify(built));
  renameSync(`${stamps}.new`, stamps);
}
