// How strong the tests are: changes the sources one place at a time, as Stryker does, and sees whether a
// test fails. A sample, because a whole run takes days; DEVELOPERS.md says what is left out and why.
//   npm run mutants -- units                              50 mutants of src/units, drawn with seed 1
//   npm run mutants -- units job/plan --sample 40 --seed 7
//   npm run mutants -- --at src/units/slope.ts:40         every mutant of a line, instead of a sample
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { makeCompiler } from './compiler.mjs';
import { mutateFolder } from './mutator.mjs';
import { passesOf } from './passes.mjs';
import { TestProcess } from './test-process.mjs';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
process.chdir(root);

/** The folders whose tests are measured, and where these lie. */
const TESTS_OF = new Map([
  ['units', ['tests/units/']],
  // the kernels of figures are public through outlines alone
  ['geometry', ['tests/geometry/', 'tests/outline/']],
  ['build-up', ['tests/build-up/']],
  ['string-line', ['tests/string-line/']],
  ['stakes', ['tests/stakes/']],
  ['volumes', ['tests/volumes/']],
  ['outline', ['tests/outline/']],
  ['job/plan', ['tests/job/']],
]);

const isTestOf = (folder, name) => TESTS_OF.get(folder).some((path) => name.startsWith(path));

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    sample: { type: 'string', default: '50' },
    seed: { type: 'string', default: '1' },
    at: { type: 'string', multiple: true, default: [] },
    // tests of the folder are run for about so many seconds, those named like the source first
    own: { type: 'string', default: '60' },
    // tests of other folders are run for about so many seconds, those of all formulas first
    others: { type: 'string', default: '12' },
  },
});

/** A wording is changed by nobody's mistake, and other tests hold it: a string of several words. */
const isWording = ({ kind, before }) =>
  kind === 'StringLiteral' && /\S\s+\S|\S\s|\s\S/.test(before);

/** Numbers from 0 to 1 (mulberry32), the same for the same text. */
function randomFrom(text) {
  let state = [...text].reduce((sum, char) => (Math.imul(sum, 31) + char.charCodeAt(0)) | 0, 17);
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

function drawn(mutants, count, seed) {
  const random = randomFrom(seed);
  const rest = [...mutants];
  const sample = [];
  while (sample.length < count && rest.length > 0)
    sample.push(...rest.splice(Math.floor(random() * rest.length), 1));
  return sample;
}

/** Test files that pass the mutant, those of its folder first, the quickest first. */
function testsFor({ file, number }, folder, passes) {
  const all = Object.entries(passes);
  const has = (numbers) => numbers?.includes(number) === true;
  // what runs when a file is loaded is seen by every test that loads the file
  const isStatic = all.some(([, { atLoad }]) => has(atLoad[file]));
  const sees = ([name, { passed }]) =>
    has(passed[file]) || (isStatic && (passed[file] !== undefined || isTestOf(folder, name)));
  const seen = all.filter(sees).sort((a, b) => a[1].ms - b[1].ms);
  // a test file that is called like the source is the likeliest to fail
  const isNamesake = ([name]) => basename(name, '.test.ts') === basename(file, '.ts');
  // and these hold laws of every step of the working, so they are run even if their turn never comes
  const isOfSteps = ([name]) => name === 'tests/job/explain.test.ts';
  let leftOfOwn = Number(values.own) * 1000;
  const own = seen
    .filter(([name]) => isTestOf(folder, name))
    .sort((a, b) => Number(isNamesake(b)) - Number(isNamesake(a)))
    .filter((test) => isNamesake(test) || isOfSteps(test) || (leftOfOwn -= test[1].ms) > 0);
  const isOfFormulas = ([name]) => name.startsWith('tests/formulas/');
  let left = Number(values.others) * 1000;
  const others = [
    ...seen.filter(isOfFormulas),
    ...seen.filter(
      (test) => !isOfFormulas(test) && !isTestOf(folder, test[0]) && (left -= test[1].ms) > 0,
    ),
  ];
  return [own, others].filter((stage) => stage.length > 0);
}

/** What happens to a mutant: the test that fails, or null. */
async function outcome(mutant, stages) {
  for (const stage of stages) {
    const longest = Math.max(...stage.map(([, { ms }]) => ms));
    const task = {
      files: stage.map(([name]) => join(root, name)),
      source: [join(root, mutant.file), mutant.text],
    };
    const { failure } = await tests.run(task, 30_000 + 5 * longest);
    if (failure !== null) return failure;
  }
  return null;
}

const oneLine = (text) => {
  const flat = text.replaceAll(/\s+/g, ' ');
  return flat.length > 90 ? `${flat.slice(0, 87)}...` : flat;
};

/** Ctrl+C stops at the mutant in hand, and what was found before it is printed. */
let isStopped = false;
for (const signal of ['SIGINT', 'SIGTERM'])
  process.once(signal, () => {
    isStopped = true;
  });

/** What becomes of a mutant, and for a test that fails, which. */
async function judge(mutant, folder, passes) {
  const stages = testsFor(mutant, folder, passes);
  const failure = await outcome(mutant, stages);
  if (failure === 'no end') return { kind: 'endless' };
  if (failure !== null) return { kind: 'killed', failure };
  if (refusedByCompiler(mutant.file, mutant.text)) return { kind: 'refused' };
  return { kind: stages.length === 0 ? 'unseen' : 'survived' };
}

async function runFolder(folder, passes, all) {
  const mutants = all.flatMap((source) => source.mutants).filter((one) => !isWording(one));
  const isAt = ({ file, line }) => values.at.some((at) => at === file || at === `${file}:${line}`);
  const sample =
    values.at.length > 0
      ? mutants.filter(isAt)
      : drawn(mutants, Number(values.sample), `${folder} ${values.seed}`);
  const files = Object.keys(passes).filter((name) => isTestOf(folder, name));
  const { failure: before } = await tests.run({ files: files.map((name) => join(root, name)) });
  if (before !== null) throw new Error(`a test fails before anything is changed: ${before}`);
  const counts = { killed: 0, endless: 0, refused: 0, survived: 0, unseen: 0 };
  const start = performance.now();
  for (const [index, mutant] of sample.entries()) {
    const { kind, failure } = await judge(mutant, folder, passes);
    if (isStopped) break;
    counts[kind] += 1;
    if (kind === 'killed' && values.at.length === 0) continue;
    const { file, line, before, after } = mutant;
    const change = `${mutant.kind}: ${oneLine(before)} => ${oneLine(after)}`;
    console.log(`${index + 1}/${sample.length} ${kind}: ${file}:${line} ${change}`);
    if (failure !== undefined) console.log(`    by ${failure.replace(`${root}/`, '')}`);
  }
  const done = Object.values(counts).reduce((sum, count) => sum + count);
  const killed = counts.killed + counts.endless;
  const left = counts.survived + counts.unseen;
  const row = [
    `\`${folder}\``,
    mutants.length,
    done,
    killed,
    counts.refused,
    left,
    `${((100 * killed) / (killed + left)).toFixed(0)} %`,
    values.seed,
  ];
  const seconds = ((performance.now() - start) / 1000 / done).toFixed(1);
  console.log(`| ${row.join(' | ')} | (${seconds} s each)\n`);
}

const folders = positionals.length > 0 ? positionals : [...TESTS_OF.keys()];
for (const folder of folders)
  if (!TESTS_OF.has(folder))
    throw new Error(`not one of ${[...TESTS_OF.keys()].join(', ')}: ${folder}`);
const sources = new Map();
for (const folder of TESTS_OF.keys()) sources.set(folder, await mutateFolder(root, folder));
const passes = await passesOf(root, [...sources.values()].flat(), (name) =>
  folders.some((folder) => name.startsWith(`src/${folder}/`)),
);
const tests = new TestProcess();
const refusedByCompiler = makeCompiler(root);
for (const folder of folders) if (!isStopped) await runFolder(folder, passes, sources.get(folder));
tests.stop();
