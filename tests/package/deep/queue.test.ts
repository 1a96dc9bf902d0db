// The example of a queue, in a project with the packed package and the packages that it needs.
import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, inject, test } from 'vitest';
import { whyNoRedis } from '../redis.js';

const root = join(import.meta.dirname, '..', '..', '..');
const folder = mkdtempSync(join(tmpdir(), 'settline-queue-test-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A project of its own: the queue and its client are no packages of ours. */
function makeProject(): void {
  writeFileSync(join(folder, 'package.json'), JSON.stringify({ name: 'queue', private: true }));
  const packages = [inject('tarball'), 'bullmq@6.7.0', 'ioredis@5.11.1'];
  const flags = ['--no-audit', '--no-fund', '--prefer-offline', '--ignore-scripts'];
  execFileSync('npm', ['install', ...flags, ...packages], { cwd: folder, stdio: 'pipe' });
  mkdirSync(join(folder, 'examples'));
  cpSync(join(root, 'examples'), join(folder, 'examples'), { recursive: true });
}

test('a queue: a worker is killed, nothing is lost and nothing is there twice', (context) => {
  const reason = whyNoRedis();
  if (reason !== undefined) {
    console.warn(`Redis: ${reason}`);
    context.skip(reason);
    return;
  }
  makeProject();
  const jobs = 2000;
  const { stdout, stderr, status } = spawnSync(
    'node',
    ['examples/queue/run.mjs', '--jobs', String(jobs)],
    { cwd: folder, encoding: 'utf8', timeout: 600_000 },
  );
  expect(stderr).toBe('');
  expect(status).toBe(0);
  const [killed = '', summary = ''] = stdout.trimEnd().split('\n').slice(-2);
  const counts = JSON.parse(summary) as Readonly<Record<string, number>>;
  expect(stdout).toContain('the first worker is killed');
  expect(killed).not.toBe('');
  expect(counts).toMatchObject({ jobs, results: jobs, different: jobs, left: 0 });
  expect(counts['first']).toBeGreaterThan(0);
  expect(counts['second']).toBeGreaterThan(counts['first'] ?? 0);
  expect((counts['first'] ?? 0) + (counts['second'] ?? 0)).toBe(jobs);
}, 700_000);
