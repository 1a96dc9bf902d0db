import type { LineResult, RunFault, WorkerAnswer } from './messages.js';

/** What a run gave; `isStopped` where it was ended for taking too long. */
export interface RunOutcome {
  readonly lines: readonly LineResult[];
  readonly faults: readonly RunFault[];
  readonly isStopped: boolean;
}

/** Longest time that an example may run [ms]; loading the library does not count. */
export const LONGEST_RUN = 3000;

interface Waiting {
  readonly id: number;
  readonly end: (outcome: RunOutcome) => void;
  timer?: ReturnType<typeof setTimeout>;
}

/** A worker that runs examples, one for the whole page; a new one after one was ended. */
interface Runner {
  readonly worker: Worker;
  readonly ready: Promise<void>;
}

let runner: Runner | undefined;
let waiting: Waiting | undefined;
let count = 0;

function startRunner(): Runner {
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  const ready = new Promise<void>((resolve, reject) => {
    worker.addEventListener('message', ({ data }: MessageEvent<WorkerAnswer>) => {
      if (data.kind === 'ready') resolve();
      else if (data.id === waiting?.id) finish({ ...data, isStopped: false });
    });
    worker.addEventListener('error', (event) => {
      reject(new Error(event.message));
      drop(worker);
    });
  });
  return { worker, ready };
}

function finish(outcome: RunOutcome): void {
  clearTimeout(waiting?.timer);
  waiting?.end(outcome);
  waiting = undefined;
}

/** Ends a worker, and with it whatever it is at. */
function drop(worker: Worker): void {
  worker.terminate();
  if (runner?.worker === worker) runner = undefined;
}

/** Loads the worker with the library, before the first run asks for it. */
export async function warmUp(): Promise<void> {
  runner ??= startRunner();
  await runner.ready;
}

/** Runs an example in the worker; a run that is still going on is ended first. */
export async function runExample(code: string): Promise<RunOutcome> {
  if (waiting !== undefined && runner !== undefined) {
    drop(runner.worker);
    finish({ lines: [], faults: [], isStopped: true });
  }
  await warmUp();
  const { worker } = (runner ??= startRunner());
  count += 1;
  const id = count;
  return new Promise((resolve) => {
    const own: Waiting = { id, end: resolve };
    waiting = own;
    own.timer = setTimeout(() => {
      drop(worker);
      finish({ lines: [], faults: [], isStopped: true });
    }, LONGEST_RUN);
    worker.postMessage({ id, code });
  });
}
