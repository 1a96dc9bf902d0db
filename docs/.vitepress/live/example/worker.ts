// Runs one example at a time. The page ends the worker where an example takes too long.
import cedarCourt from '../../../../examples/cedar-court.json?raw';
import type { RunRequest, WorkerAnswer } from './messages.js';
import { runCode } from './run-code.js';

/** Ways out of the page: an example has no use for them. */
const WAYS_OUT = [
  'fetch',
  'XMLHttpRequest',
  'WebSocket',
  'EventSource',
  'WebTransport',
  'BroadcastChannel',
  'importScripts',
  'indexedDB',
  'caches',
  'Worker',
];

const say = (answer: WorkerAnswer): void => {
  self.postMessage(answer);
};

async function run({ id, code }: RunRequest): Promise<void> {
  say({ kind: 'done', id, ...(await runCode(code, cedarCourt)) });
}

for (const name of WAYS_OUT) {
  if (name in self) Object.defineProperty(self, name, { value: undefined });
}
self.addEventListener('message', ({ data }: MessageEvent<RunRequest>) => {
  void run(data);
});
say({ kind: 'ready' });
