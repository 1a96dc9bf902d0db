// The example that plans many jobs, as a user starts it.
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { appendFileSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, expect, test } from 'vitest';
import { tryPlanJob } from 'settline/job';
import { jobOf } from '../../examples/invented-jobs.mjs';

const root = join(import.meta.dirname, '..', '..');
const folder = mkdtempSync(join(tmpdir(), 'settline-examples-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const isDeep = process.env['SETTLINE_DEPTH'] !== undefined;

interface Line {
  readonly number: number;
  readonly ok: boolean;
  readonly pavers?: readonly number[];
}

test('many jobs: stopped, killed in the middle of a line and taken up again, each is planned once', async () => {
  const file = join(folder, 'results.jsonl');
  const count = isDeep ? 10_000 : 110;
  const args = ['examples/many-jobs.mjs', '--jobs', String(count), '--results', file];
  const lines = () => readFileSync(file, { encoding: 'utf8', flag: 'a+' }).split('\n').length - 1;
  const first = spawn('node', args, { cwd: root, stdio: ['ignore', 'ignore', 'pipe'] });
  const said: string[] = [];
  first.stderr.on('data', (text: Buffer) => said.push(text.toString()));
  while (lines() < 4) await wait(10);
  first.kill('SIGINT');
  const [status] = (await once(first, 'close')) as [number];
  const stopped = lines();
  expect(status).toBe(130);
  expect(said.join('')).toMatch(/\d of \d+ done, \d+ failed, [\d.]+\/s, \S+ left\nStopped\./);
  expect(stopped).toBeLessThan(count);

  appendFileSync(file, '{"number":');
  const { stderr, status: last } = spawnSync('node', args, { cwd: root, encoding: 'utf8' });
  expect(last).toBe(0);
  expect(stderr).toContain(`has ${stopped} results; ${count - stopped} jobs are open.`);
  expect(stderr).not.toContain('\r');
  const results = readFileSync(file, 'utf8')
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as Line);
  expect(results).toHaveLength(count);
  expect(new Set(results.map(({ number }) => number)).size).toBe(count);
  const faulty = results.filter(({ ok }) => !ok).map(({ number }) => number);
  expect(faulty.length).toBeGreaterThan(0);
  for (const { number, ok, pavers } of results.slice(0, 12)) {
    const here = tryPlanJob(jobOf(number));
    expect(ok).toBe(here.ok);
    if (here.ok) expect(pavers).toEqual(here.value.totals.pavers.map(({ order }) => order));
  }
});
