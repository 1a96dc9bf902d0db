import { fault } from '../errors.js';
import { isPlain } from '../input/plain.js';
import { shown } from '../input/shown.js';
import type { OpenWorkers } from './job-workers.js';

/** What `webWorkers` needs of a `Worker`. */
export interface WebWorker {
  /** Sends a job. */
  postMessage(message: unknown): void;
  /** Listens for answers and for the end of the worker. */
  addEventListener(
    type: 'message' | 'error' | 'messageerror',
    listener: (event: unknown) => void,
  ): void;
  /** Ends the worker. */
  terminate(): void;
}

/** One job that a worker has. */
interface Waiting {
  readonly resolve: (answer: unknown) => void;
  readonly reject: (error: unknown) => void;
}

/** One worker, and the jobs that it has. */
interface Seat {
  readonly worker: WebWorker;
  readonly waiting: Map<number, Waiting>;
}

/**
 * Workers of a browser for `planJobs`: as many as its `concurrency`, else one. The module of the
 * worker calls {@link servePlans}.
 *
 * @param makeWorker - makes one worker. Written out as below, bundlers find its module
 * @returns what `planJobs` takes as `workers`
 * @throws `WRONG_TYPE` if it is not a function; while it plans, `WORKER_LOST`
 * @example
 * // const workers = webWorkers(
 * //   () => new Worker(new URL('./planner.js', import.meta.url), { type: 'module' }),
 * // );
 * // for await (const { index, outcome } of planJobs(jobs, { workers })) show(index, outcome);
 * typeof webWorkers //=> 'function'
 */
export function webWorkers(makeWorker: () => WebWorker): OpenWorkers {
  if (typeof makeWorker !== 'function') {
    const message = `expected a function that makes a Worker, got ${shown(makeWorker)}`;
    throw fault('WRONG_TYPE', message);
  }
  return (concurrency) => {
    const seats = Array.from({ length: concurrency ?? 1 }, () => takeSeat(makeWorker()));
    let last = 0;
    return {
      size: seats.length,
      plan: (job) => ask(leastBusy(seats), (last += 1), job),
      close: () => {
        for (const { worker } of seats) worker.terminate();
      },
    };
  };
}

const leastBusy = (seats: readonly Seat[]): Seat | undefined =>
  [...seats].sort((a, b) => a.waiting.size - b.waiting.size)[0];

const ask = (seat: Seat | undefined, id: number, job: unknown): Promise<unknown> =>
  new Promise((resolve, reject) => {
    seat?.worker.postMessage({ id, job });
    seat?.waiting.set(id, { resolve, reject });
  });

function takeSeat(worker: WebWorker): Seat {
  const waiting = new Map<number, Waiting>();
  worker.addEventListener('message', (event) => {
    const { data } = event as { readonly data: unknown };
    if (!isPlain(data) || typeof data['id'] !== 'number') return;
    const one = waiting.get(data['id']);
    waiting.delete(data['id']);
    if (data['bug'] === undefined) one?.resolve(data['answer']);
    else one?.reject(lost(`a worker failed: ${shown(data['bug'])}`));
  });
  const end = (): void => {
    for (const one of waiting.values()) one.reject(lost('a worker ended before it answered'));
    waiting.clear();
  };
  worker.addEventListener('error', end);
  worker.addEventListener('messageerror', end);
  return { worker, waiting };
}

const lost = (words: string) => fault('WORKER_LOST', `${words}. See the console of the browser`);
