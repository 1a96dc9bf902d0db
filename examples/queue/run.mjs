// Plans jobs by a queue: a Redis server, two worker processes, of which one is killed on the way. Every
// job has one result in the end. For development: needs Debian's redis-server and the packages bullmq and ioredis.
//   node examples/queue/run.mjs               2000 jobs
//   node examples/queue/run.mjs --jobs 100
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { Queue } from 'bullmq';

const { values } = parseArgs({ options: { jobs: { type: 'string', default: '2000' } } });
const total = Number(values.jobs);

if (spawnSync('redis-server', ['--version']).status !== 0) {
  console.error('This needs a Redis server: apt-get install redis-server');
  process.exit(1);
}

const server = createServer().listen(0, '127.0.0.1');
await once(server, 'listening');
const { port } = server.address();
server.close();
await once(server, 'close');

const folder = mkdtempSync(join(tmpdir(), 'settline-queue-'));
const settings = { port, bind: '127.0.0.1', dir: folder, save: '', appendonly: 'no' };
const redis = spawn(
  'redis-server',
  Object.entries(settings).flatMap(([name, value]) => [`--${name}`, String(value)]),
  { stdio: 'ignore' },
);
const queue = new Queue('plans', { connection: { host: '127.0.0.1', port } });
// until the server is up
queue.on('error', () => undefined);

function startWorker(name) {
  const script = fileURLToPath(new URL('./worker.mjs', import.meta.url));
  return spawn('node', [script, String(port), name], { stdio: ['ignore', 'inherit', 'inherit'] });
}

/** Waits until a number of jobs is done, and prints how far it is. */
async function waitFor(count) {
  for (let [done, shown] = [0, 0]; ;) {
    done = await queue.getCompletedCount();
    if (done >= count) return done;
    if (done - shown >= total / 10) {
      shown = done;
      console.log(`${done} of ${total} done`);
    }
    await wait(50);
  }
}

let workers = [];
try {
  await queue.waitUntilReady();
  // the id is that of the job: adding a job twice adds it once
  const jobs = Array.from({ length: total }, (_, number) => ({
    name: 'plan',
    data: { number },
    opts: { jobId: `site-${number}` },
  }));
  await queue.addBulk(jobs);
  await queue.addBulk(jobs.slice(0, 10));
  workers = [startWorker('first'), startWorker('second')];
  const before = await waitFor(Math.ceil(total / 4));
  workers[0].kill('SIGKILL');
  console.log(`${before} of ${total} done: the first worker is killed`);
  await waitFor(total);

  const results = (await queue.getCompleted(0, -1)).map(({ returnvalue }) => returnvalue);
  const numbers = new Set(results.map(({ number }) => number));
  const by = (name) => results.filter(({ worker }) => worker === name).length;
  const left = Object.values(await queue.getJobCounts('waiting', 'active', 'delayed', 'failed'));
  console.log(
    JSON.stringify({
      jobs: total,
      results: results.length,
      different: numbers.size,
      left: left.reduce((sum, count) => sum + count, 0),
      faulty: results.filter(({ ok }) => !ok).length,
      first: by('first'),
      second: by('second'),
    }),
  );
  process.exitCode = results.length === total && numbers.size === total ? 0 : 1;
} finally {
  for (const worker of workers) worker.kill('SIGKILL');
  await queue.close();
  redis.kill('SIGKILL');
  await once(redis, 'exit');
  rmSync(folder, { recursive: true, force: true });
}
