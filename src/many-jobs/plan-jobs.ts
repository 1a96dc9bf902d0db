import { fault } from '../errors.js';
import { optional, whole } from '../input/field.js';
import type { Reader } from '../input/reader.js';
import { readOptions, shapeOf, type OptionalField } from '../input/shape.js';
import { shown } from '../input/shown.js';
import { tryPlanJob } from '../job/plan-job.js';
import { once } from '../once.js';
import { askWorkers } from './answer.js';
import { JobRun, type Jobs, type PlannedJob } from './job-run.js';
import type { OpenWorkers } from './job-workers.js';
import type { StopSignal } from './stop-signal.js';

/** How many jobs are planned. */
export interface PlanJobsOptions {
  /** Stops the planning at once; its reason is thrown. An `AbortSignal` is one. */
  readonly signal?: StopSignal;
  /**
   * Who plans: `nodeThreads` of `settline/node-threads`, {@link webWorkers}, or workers of your own.
   * Default: nobody else; the jobs are planned here, one after another.
   */
  readonly workers?: OpenWorkers;
  /** Number of workers; whole, 1 to 1024. Only with `workers`, which have a default of their own. */
  readonly concurrency?: number;
}

const MOST_WORKERS = 1024;

/** What a caller hands in that is no data. */
const passed = <T>(
  words: string,
  isOne: (value: unknown) => boolean,
): OptionalField<T | undefined> => ({
  read: (reader: Reader, value, path) => {
    if (!isOne(value)) reader.fail('WRONG_TYPE', path, `expected ${words}, got ${shown(value)}`);
    return value as T;
  },
  isOptional: true,
  fallback: undefined,
});

const isSignal = (value: unknown): boolean =>
  typeof value === 'object' &&
  value !== null &&
  'aborted' in value &&
  'addEventListener' in value &&
  'removeEventListener' in value;

const OPTIONS = shapeOf<PlanJobsOptions>()({
  signal: passed<StopSignal>('an AbortSignal', isSignal),
  workers: passed<OpenWorkers>(
    'a function that starts workers, such as nodeThreads',
    (value) => typeof value === 'function',
  ),
  concurrency: optional(whole({ sign: 'positive', most: MOST_WORKERS, example: '4' })),
});

/**
 * Plans many jobs and gives each result as soon as it is there, so not in the order of the jobs:
 * `index` says which job it is. A job with faults is a result like any other. Jobs are taken only as
 * results are: at most two for each worker are under way, or one without workers.
 *
 * The workers are started for the first result, and ended after the last, after `break`, at a fault
 * of the source, and when `signal` stops.
 *
 * @param jobs - job descriptions of unknown origin: a list, a generator, lines of a file
 * @param options - see {@link PlanJobsOptions}
 * @returns the results; each plan equals that of `planJob`, with its working. Once through only
 * @throws `WRONG_TYPE` and the codes of the options at the call; while it runs, the reason of
 *   `signal`, what the source throws, and `WORKER_LOST` for a worker that ends
 * @example
 * const codes: string[] = [];
 * for await (const { index, outcome } of planJobs([job, { version: 1 }])) {
 *   codes.push(`${index}: ${outcome.ok ? 'planned' : outcome.errors[0]?.code}`);
 * }
 * codes //=> ['0: planned', '1: REQUIRED']
 */
export function planJobs(jobs: Jobs, options: PlanJobsOptions = {}): AsyncIterable<PlannedJob> {
  const read = readOptions(options, OPTIONS, (reader, { concurrency, workers }, path) => {
    if (concurrency === undefined || workers !== undefined) return;
    const message = 'concurrency is the number of workers. Give workers too, or leave it out';
    reader.fail('REQUIRED', [...path, 'workers'], message);
  });
  if (!isIterable(jobs)) {
    throw fault('WRONG_TYPE', `expected a list of jobs or another iterable, got ${shown(jobs)}`);
  }
  return planEach(jobs, read);
}

const isIterable = (jobs: unknown): boolean =>
  typeof jobs === 'object' &&
  jobs !== null &&
  (Symbol.asyncIterator in jobs || Symbol.iterator in jobs);

interface Read {
  readonly signal: StopSignal | undefined;
  readonly workers: OpenWorkers | undefined;
  readonly concurrency: number | undefined;
}

async function* planEach(jobs: Jobs, { signal, workers, concurrency }: Read) {
  throwIfStopped(signal);
  const crew = await workers?.(concurrency ?? null);
  const close = once(async () => crew?.close());
  const run = new JobRun(
    jobs,
    crew === undefined
      ? { window: 1, plan: planHere }
      : { window: 2 * crew.size, plan: (job) => askWorkers(crew, job) },
  );
  const stop = (): void => {
    run.fail(signal?.reason);
    close().catch(run.fail);
  };
  signal?.addEventListener('abort', stop);
  try {
    if (signal?.aborted === true) stop();
    for (let one = await run.next(); one !== undefined; one = await run.next()) yield one;
  } finally {
    signal?.removeEventListener('abort', stop);
    run.end();
    await close();
  }
}

function throwIfStopped(signal: StopSignal | undefined): void {
  if (signal?.aborted === true) throw signal.reason;
}

declare const setTimeout: (then: () => void, milliseconds: number) => unknown;

/** Plans a job here, once everything else that waits had its turn. */
async function planHere(job: unknown) {
  await new Promise<void>((resolve) => setTimeout(resolve, 0));
  return tryPlanJob(job);
}
