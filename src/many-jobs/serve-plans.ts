import { fault } from '../errors.js';
import { isPlain } from '../input/plain.js';
import { shown } from '../units/shown.js';
import { planInWorker } from './plan-in-worker.js';

/** What `servePlans` needs of the global scope of a web worker, or of a message port. */
export interface WorkerScope {
  /** Listens for jobs. */
  addEventListener(type: 'message', listener: (event: unknown) => void): void;
  /** Sends a plan back. */
  postMessage(message: unknown): void;
}

/**
 * The whole of a web worker that plans jobs: call it once in the module of the worker, with `self`.
 * {@link webWorkers} starts such workers and asks them.
 *
 * @param scope - `self` in the worker
 * @throws `WRONG_TYPE` if it cannot listen and answer
 * @example
 * // in planner.js: servePlans(self);
 * const { port1, port2 } = new MessageChannel();
 * servePlans(port1);
 * port2.close();
 * typeof servePlans //=> 'function'
 */
export function servePlans(scope: WorkerScope): void {
  if (!isScope(scope)) {
    throw fault('WRONG_TYPE', `pass self of the worker, or a message port, got ${shown(scope)}`);
  }
  scope.addEventListener('message', (event) => {
    const { data } = event as { readonly data: unknown };
    if (!isPlain(data) || typeof data['id'] !== 'number') return;
    scope.postMessage(answerTo(data['id'], data['job']));
  });
}

function isScope(value: unknown): value is WorkerScope {
  if (typeof value !== 'object' || value === null) return false;
  const { addEventListener, postMessage } = value as Partial<Record<keyof WorkerScope, unknown>>;
  return typeof addEventListener === 'function' && typeof postMessage === 'function';
}

function answerTo(id: number, job: unknown): unknown {
  try {
    return { id, answer: planInWorker(job) };
  } catch (error) {
    return { id, bug: String(error) };
  }
}
