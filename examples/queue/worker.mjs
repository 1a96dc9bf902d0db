// One worker process of the queue: run.mjs starts it. A job whose worker was killed loses its lock and
// is taken by another worker; its result is kept once, under its id.
import { Worker } from 'bullmq';
import { planInWorker } from 'settline/many-jobs';
import { jobOf } from '../invented-jobs.mjs';

const [port, name] = process.argv.slice(2);

new Worker(
  'plans',
  ({ data: { number } }) => {
    const { ok, value, errors } = planInWorker(jobOf(number));
    const found = ok
      ? { pavers: value.totals.pavers.map(({ order }) => order) }
      : { errors: errors.map(({ code }) => code) };
    return Promise.resolve({ number, worker: name, ok, ...found });
  },
  {
    connection: { host: '127.0.0.1', port: Number(port) },
    lockDuration: 10_000,
    stalledInterval: 2000,
    maxStalledCount: 3,
  },
);
