// Which tests pass which mutants: found out by running every test once, and kept until a file changes.
import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { TestProcess } from './test-process.mjs';

const CACHE = 'node_modules/.cache/settline/mutants.json';

/** These read the sources as text, are not of the library alone, or are slow and about other things. */
const APART = /^tests\/(package|built-site|live|house|docs|types|drawing|many-jobs)\//;

/** So many test files are run at once; what they passed is kept before the next. */
const BATCH = 15;

const hashOf = (text) => createHash('sha256').update(text).digest('hex').slice(0, 16);

const testFiles = () =>
  readdirSync('tests', { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.test.ts'))
    .map((name) => join('tests', name))
    .filter((name) => !APART.test(name))
    .sort();

const read = () => (existsSync(CACHE) ? JSON.parse(readFileSync(CACHE, 'utf8')) : {});

/** Runs the tests on sources with marks; each answer lies in a file. */
async function runWithMarks(root, names, sources) {
  const folder = mkdtempSync(join(tmpdir(), 'settline-marks-'));
  const replaced = sources.map(({ name, marked }) => [join(root, name), marked]);
  writeFileSync(join(folder, 'sources'), JSON.stringify(replaced));
  const tests = new TestProcess({ SETTLINE_MARKS: folder });
  const { failure, times } = await tests.run({ files: names.map((name) => join(root, name)) });
  tests.stop();
  if (failure !== null) throw new Error(`a test fails before anything is changed: ${failure}`);
  const found = new Map();
  for (const [path, ms] of times) {
    const answer = JSON.parse(readFileSync(join(folder, encodeURIComponent(path)), 'utf8'));
    found.set(path.slice(root.length + 1), { ms, ...answer });
  }
  rmSync(folder, { recursive: true });
  return found;
}

/**
 * For each test file: how long it takes, and the numbers of the mutants it passes, by source. It is run
 * anew if it changed, or a wanted source that it passes.
 */
export async function passesOf(root, sources, isWanted) {
  const cache = read();
  const hashes = Object.fromEntries(sources.map(({ name, content }) => [name, hashOf(content)]));
  const isStale = (name) => {
    const kept = cache[name];
    if (kept?.hash !== hashOf(readFileSync(name))) return true;
    return Object.entries(kept.sources).some(
      ([source, hash]) => isWanted(source) && hash !== hashes[source],
    );
  };
  const names = testFiles();
  const stale = names.filter(isStale);
  const save = () => {
    const tests = Object.fromEntries(
      names.filter((name) => cache[name]).map((name) => [name, cache[name]]),
    );
    mkdirSync(dirname(CACHE), { recursive: true });
    writeFileSync(CACHE, JSON.stringify(tests));
    return tests;
  };
  for (const name of stale) delete cache[name];
  if (stale.length > 0)
    console.log(`Finding out what ${stale.length} of ${names.length} test files pass ...`);
  for (let at = 0; at < stale.length; at += BATCH) {
    const found = await runWithMarks(root, stale.slice(at, at + BATCH), sources);
    for (const [name, passes] of found) {
      const passed = Object.keys(passes.passed).map((source) => [source, hashes[source]]);
      const hash = hashOf(readFileSync(name));
      cache[name] = { hash, sources: Object.fromEntries(passed), ...passes };
    }
    save();
  }
  return save();
}
