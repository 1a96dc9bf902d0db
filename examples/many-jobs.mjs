// Plans many invented jobs on all cores, and keeps the results in a file, a line for each.
//   node examples/many-jobs.mjs                          10 000 jobs into many-jobs.jsonl
//   node examples/many-jobs.mjs --jobs 500 --threads 2 --results some.jsonl
//   node examples/many-jobs.mjs --scaling                what one, two ... threads bring
// Stop it with Ctrl-C; started again, it goes on where it was and plans nothing twice.
// Threads need tinypool: npm install tinypool
import { appendFileSync, existsSync, readFileSync, truncateSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { parseArgs } from 'node:util';
import { planJobs } from 'settline/many-jobs';
import { nodeThreads } from 'settline/node-threads';
import { jobOf } from './invented-jobs.mjs';

const { values } = parseArgs({
  options: {
    jobs: { type: 'string', default: '10000' },
    threads: { type: 'string', default: String(availableParallelism()) },
    results: { type: 'string', default: 'many-jobs.jsonl' },
    scaling: { type: 'boolean', default: false },
  },
});

/** Numbers of the jobs that a file has results of; half a line of a run that was killed is cut off. */
function numbersIn(file) {
  if (!existsSync(file)) return new Set();
  const text = readFileSync(file, 'utf8');
  const whole = text.slice(0, text.lastIndexOf('\n') + 1);
  if (whole !== text) truncateSync(file, Buffer.byteLength(whole));
  return new Set(whole.split('\n').flatMap((line) => (line ? [JSON.parse(line).number] : [])));
}

/** What is kept of a result: here the order of pavers and the trucks; a real one keeps the plan. */
const lineOf = (number, { ok, value, errors }) =>
  ok
    ? {
        number,
        ok,
        pavers: value.totals.pavers.map(({ order }) => order),
        warnings: value.warnings.length,
      }
    : { number, ok, errors: errors.map(({ code, path }) => ({ code, path })) };

const clock = (seconds) => new Date(seconds * 1000).toISOString().slice(11, 19);

/** Prints how far it is: on one line of a terminal, else a plain line every two seconds. */
function startProgress(total) {
  const { isTTY } = process.stderr;
  const start = performance.now();
  let shown = start;
  const line = ({ done, failed }) => {
    const rate = (1000 * done) / (performance.now() - start);
    const left = rate > 0 ? clock((total - done) / rate) : '?';
    return `${done} of ${total} done, ${failed} failed, ${rate.toFixed(1)}/s, ${left} left`;
  };
  return {
    show: (counts) => {
      if (performance.now() - shown < (isTTY ? 100 : 2000)) return;
      shown = performance.now();
      process.stderr.write(isTTY ? `\r\x1b[K${line(counts)}` : `${line(counts)}\n`);
    },
    end: (counts) => process.stderr.write(`${isTTY ? '\r\x1b[K' : ''}${line(counts)}\n`),
  };
}

async function planInto(file, signal) {
  const known = numbersIn(file);
  const numbers = Array.from({ length: Number(values.jobs) }, (_, number) => number);
  const open = numbers.filter((number) => !known.has(number));
  if (known.size > 0)
    console.error(`${file} has ${known.size} results; ${open.length} jobs are open.`);
  const counts = { done: 0, failed: 0 };
  const progress = startProgress(open.length);
  // jobs are made one by one, as the threads ask for them
  const jobs = open.values().map?.(jobOf) ?? open.map(jobOf);
  const options = { workers: nodeThreads, concurrency: Number(values.threads), signal };
  try {
    for await (const { index, outcome } of planJobs(jobs, options)) {
      appendFileSync(file, `${JSON.stringify(lineOf(open[index], outcome))}\n`);
      counts.done += 1;
      if (!outcome.ok) counts.failed += 1;
      progress.show(counts);
    }
  } catch (error) {
    if (!signal.aborted) throw error;
    process.exitCode = 130;
  }
  progress.end(counts);
  if (signal.aborted) console.error('Stopped. Start it again to go on.');
}

/** Plans the same jobs on one thread, two, four ... and prints the time and the processor time. */
async function showScaling(signal) {
  const jobs = Array.from({ length: Math.min(Number(values.jobs), 200) }, (_, number) =>
    jobOf(number),
  );
  console.log(
    'threads   time   processor   jobs/s   of that, per thread   jobs per processor second',
  );
  let alone;
  for (let threads = 1; threads <= Number(values.threads); threads *= 2) {
    const options = { workers: nodeThreads, concurrency: threads, signal };
    let warm = 0;
    let [start, used] = [0, process.cpuUsage()];
    // the first results wait for the threads to load the library
    for await (const { index } of planJobs([...jobs.slice(0, 8 * threads), ...jobs], options)) {
      warm += index >= 0 ? 1 : 0;
      if (warm === 8 * threads) [start, used] = [performance.now(), process.cpuUsage()];
    }
    const seconds = (performance.now() - start) / 1000;
    const { user, system } = process.cpuUsage(used);
    const processor = (user + system) / 1e6;
    const rate = jobs.length / seconds;
    alone ??= rate;
    const share = `${Math.round((100 * rate) / alone / threads)} %`;
    console.log(
      [
        String(threads).padStart(7),
        `${seconds.toFixed(1)} s`.padStart(7),
        `${processor.toFixed(1)} s`.padStart(11),
        rate.toFixed(1).padStart(8),
        share.padStart(22),
        (jobs.length / processor).toFixed(1).padStart(27),
      ].join(' '),
    );
  }
}

const controller = new AbortController();
process.once('SIGINT', () => controller.abort());
process.once('SIGTERM', () => controller.abort());
if (values.scaling) await showScaling(controller.signal);
else await planInto(values.results, controller.signal);
