// Runs test files on sources that are not those of the disk, each time in a fresh thread. A process of
// its own, because a mutant may never end: whoever started it may then end it.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createVitest } from 'vitest/node';

const root = process.cwd();
const marksFolder = process.env.SETTLINE_MARKS;

/** Sources that are not as on the disk, by path. */
let replaced = new Map();
if (marksFolder !== undefined)
  replaced = new Map(JSON.parse(readFileSync(join(marksFolder, 'sources'), 'utf8')));

const replacedSources = {
  name: 'replaced-sources',
  enforce: 'pre',
  config: () => ({
    test: marksFolder === undefined ? {} : { setupFiles: ['.config/mutants/marks.mjs'] },
  }),
  load: (id) => replaced.get(id.split('?')[0]),
};

class AsGiven {
  sort(files) {
    return files;
  }
  shard(files) {
    return files;
  }
}

// a mutant is put into a source while Vitest loads it
process.env.SETTLINE_SOURCES = 'ts';
const vitest = await createVitest(
  'test',
  {
    config: '.config/vitest.config.ts',
    watch: false,
    maxWorkers: 1,
    // a busy machine is no fault of a mutant; what never ends is told by its processor time
    testTimeout: 300_000,
    hookTimeout: 300_000,
    bail: marksFolder === undefined ? 1 : 0,
    reporters: [{ onTestModuleEnd: () => process.send('a file is done') }],
    sequence: { sequencer: AsGiven },
  },
  { plugins: [replacedSources], logLevel: 'silent' },
);
if (marksFolder !== undefined) vitest.provide('marksFolder', marksFolder);
const specifications = new Map(
  (await vitest.globTestSpecifications()).map((one) => [one.moduleId, one]),
);

const firstFailure = (testModules, unhandledErrors) => {
  for (const module of testModules) {
    for (const test of module.children.allTests('failed'))
      return `${module.moduleId}: ${test.fullName}`;
    if (module.state() === 'failed') return `${module.moduleId}: ${module.errors()[0]?.message}`;
  }
  return unhandledErrors.length > 0 ? String(unhandledErrors[0].message) : null;
};

/** Forgets how a source was read. Vitest's own way forgets all that import it too, which is nearly all. */
function forget(path) {
  for (const { moduleGraph } of Object.values(vitest.vite.environments))
    for (const module of moduleGraph.getModulesByFile(path) ?? []) module.transformResult = null;
}

process.on('message', async ({ files, source }) => {
  if (source !== undefined) {
    const before = [...replaced.keys()];
    replaced = new Map([source]);
    for (const path of [...before, source[0]]) forget(path);
  }
  vitest.state.filesMap.clear();
  const given = files.map((name) => specifications.get(name)).filter((one) => one !== undefined);
  const { testModules, unhandledErrors } = await vitest.runTestSpecifications(given);
  process.send({
    failure: firstFailure(testModules, unhandledErrors),
    times: testModules.map((one) => [one.moduleId, one.diagnostic().duration]),
  });
});
// tests run in threads: this goes on while one of them never ends
setInterval(() => {
  const { user, system } = process.cpuUsage();
  process.send({ spent: (user + system) / 1000 });
}, 500);
process.on('disconnect', () => process.exit());
process.send('ready');
