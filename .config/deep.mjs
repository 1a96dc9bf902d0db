// Tries every property on ten times the cases, with a seed nobody has tried, and the packed package in
// the projects that take minutes, and every element of the pages in a browser.
//   npm run test:deep                        all of them
//   npm run test:deep -- tests/properties/units.test.ts
//   SETTLINE_SEED=123 npm run test:deep      once more with the seed of a failure
import { spawnSync } from 'node:child_process';
import { randomInt } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const seed = process.env.SETTLINE_SEED ?? String(randomInt(2 ** 31));

const properties = readdirSync(join(root, 'tests'), { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.test.ts') && !name.startsWith('generated'))
  .map((name) => join('tests', name))
  .filter((name) =>
    /from '(?:fast-check|[./]+runs\.js)'/.test(readFileSync(join(root, name), 'utf8')),
  )
  .sort();

const words = process.argv.slice(2);
console.log(`Properties on seed ${seed}, ten times the cases of npm test.`);
const { status } = spawnSync(
  join(root, 'node_modules', '.bin', 'vitest'),
  ['run', '--config', '.config/vitest.config.ts', ...(words.length > 0 ? words : properties)],
  {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, SETTLINE_SEED: seed, SETTLINE_DEPTH: '10' },
  },
);
/** The packed package: every TypeScript from 5.4, the queue, ten thousand jobs. */
function testPackage() {
  const run = (command, args) =>
    spawnSync(command, args, {
      cwd: root,
      stdio: 'inherit',
      env: { ...process.env, SETTLINE_DEPTH: '10' },
    }).status;
  const vitest = join(root, 'node_modules', '.bin', 'vitest');
  return (
    run('node', ['.config/build.mjs']) ||
    run(vitest, ['run', '--config', '.config/vitest.package.config.ts'])
  );
}

/** The elements of the pages in a browser. */
function testElements() {
  const vitest = join(root, 'node_modules', '.bin', 'vitest');
  const args = ['run', '--config', '.config/vitest.live.config.ts'];
  return spawnSync(vitest, args, { cwd: root, stdio: 'inherit' }).status ?? 1;
}

if (status !== 0) {
  const again = ['npm run test:deep', ...(words.length > 0 ? ['--', ...words] : [])].join(' ');
  console.error(`\nFailed on seed ${seed}. Once more: SETTLINE_SEED=${seed} ${again}`);
}
const packed = words.length > 0 ? 0 : testPackage();
const elements = words.length > 0 ? 0 : testElements();
process.exitCode = status === 0 && packed === 0 && elements === 0 ? 0 : 1;
