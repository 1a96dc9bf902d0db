// Stryker's own mutator, installed when it is first wanted, beside the caches: it is 25 MB of packages
// that nothing else here needs.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

/** The newest that runs on Node 20. */
const MUTATOR = '@stryker-mutator/instrumenter';
const VERSION = '9.6.1';

function installed() {
  const folder = join(tmpdir(), `settline-mutator-${VERSION}`);
  const entry = join(folder, 'node_modules', MUTATOR, 'dist', 'src', 'index.js');
  if (existsSync(entry)) return entry;
  console.log(`Installing ${MUTATOR} ${VERSION} in ${folder}`);
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'package.json'), '{ "private": true }\n');
  const options = ['--ignore-scripts', '--no-audit', '--no-fund', '--save-exact'];
  const { status } = spawnSync('npm', ['install', ...options, `${MUTATOR}@${VERSION}`], {
    cwd: folder,
    stdio: 'inherit',
  });
  if (status !== 0) throw new Error(`${MUTATOR} ${VERSION} could not be installed`);
  return entry;
}

const { createInstrumenter } = await import(pathToFileURL(installed()).href);

const noLog = {
  debug: () => {},
  info: () => {},
  isDebugEnabled: () => false,
};
/** The part of Stryker's injector that the mutator asks for. */
const injector = {
  provided: {},
  provideValue(token, value) {
    return { ...this, provided: { ...this.provided, [token]: value } };
  },
  injectClass(made) {
    return new made(...made.inject.map((token) => this.provided[token] ?? noLog));
  },
};
const mutator = createInstrumenter(injector);
const OPTIONS = { plugins: null, ignorers: [], excludedMutations: [] };

/** A source with its mutants, and with a mark at each that remembers whether it was passed. */
async function mutate(root, name) {
  const content = readFileSync(join(root, name), 'utf8');
  const result = await mutator.instrument([{ name, content, mutate: true }], OPTIONS);
  const lines = content.split('\n');
  const offsetAt = ({ line, column }) =>
    lines.slice(0, line).reduce((sum, text) => sum + text.length + 1, 0) + column;
  const mutants = result.mutants.map(({ id, location, mutatorName, replacement }) => {
    const start = offsetAt(location.start);
    const end = offsetAt(location.end);
    return {
      file: name,
      number: Number(id),
      line: location.start.line + 1,
      kind: mutatorName,
      before: content.slice(start, end),
      after: replacement,
      text: `${content.slice(0, start)}${replacement}${content.slice(end)}`,
    };
  });
  return { name, content, marked: withMarks(name, result.files[0].content), mutants };
}

/**
 * Stryker switches mutants on by a call at each, which makes hot loops many times slower. One mutant at
 * a time is put into the text instead; what remains of the calls is a mark in a typed array.
 */
function withMarks(name, switched) {
  const body = switched
    .replace(/function stryNS_9fa48[^]*?\nfunction stryMutAct_9fa48[^]*?\n}\n/, '')
    .replaceAll(/stryMutAct_9fa48\("\d+"\)/g, 'false')
    .replaceAll(/stryCov_9fa48\(((?:"\d+"(?:, )?)+)\)/g, (_, ids) => {
      const marks = ids.replaceAll(/"(\d+)"(?:, )?/g, 'marks9fa48[$1] = ');
      return `(${marks}1)`;
    });
  if (/stry\w+_9fa48/.test(body))
    throw new Error(`${name}: the mutator writes otherwise than expected`);
  const made = `(globalThis.settlineMarks ??= new Map())`;
  return `var marks9fa48 = new Uint8Array(9999); ${made}.set(${JSON.stringify(name)}, marks9fa48);\n${body}`;
}

/** All sources of a folder of `src`, by path, with their mutants. */
export async function mutateFolder(root, folder) {
  const names = readdirSync(join(root, 'src', folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => join('src', folder, name))
    .sort();
  const sources = [];
  for (const name of names) sources.push(await mutate(root, name));
  return sources;
}
