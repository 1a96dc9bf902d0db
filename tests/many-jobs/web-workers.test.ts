import { MessageChannel, type MessagePort } from 'node:worker_threads';
import { describe, expect, test } from 'vitest';
import { tryPlanJob } from 'settline/job';
import {
  planJobs,
  servePlans,
  webWorkers,
  type PlannedJob,
  type WebWorker,
} from 'settline/many-jobs';

/** A worker at the other end of a message channel, and what became of it. */
function channelWorkers(serve: (port: MessagePort) => void = (port) => servePlans(port)) {
  const made: { ended: boolean; asked: number }[] = [];
  const make = (): WebWorker => {
    const { port1, port2 } = new MessageChannel();
    const state = { ended: false, asked: 0 };
    made.push(state);
    serve(port2);
    return {
      postMessage: (message) => {
        port1.postMessage(message);
        state.asked += 1;
      },
      addEventListener: (type, listener) => {
        // a port is a target of events, as a Worker is
        (port1 as unknown as EventTarget).addEventListener(type, listener);
      },
      terminate: () => {
        state.ended = true;
        port1.close();
      },
    };
  };
  return { make, made };
}

async function allOf(results: AsyncIterable<PlannedJob>): Promise<PlannedJob[]> {
  const all: PlannedJob[] = [];
  for await (const one of results) all.push(one);
  return all;
}

const JOBS = [{ version: 1 }, { version: 2 }, {}, { name: 'Elm' }];

describe('workers of a browser', () => {
  test.each([
    [undefined, 1],
    [3, 3],
  ])('concurrency %s: %i workers share the jobs', async (concurrency, count) => {
    const { make, made } = channelWorkers();
    const options = {
      workers: webWorkers(make),
      ...(concurrency !== undefined && { concurrency }),
    };
    const results = await allOf(planJobs(JOBS, options));
    expect(results.sort((a, b) => a.index - b.index).map(({ outcome }) => outcome)).toEqual(
      JOBS.map(tryPlanJob),
    );
    expect(made.map(({ ended }) => ended)).toEqual(Array.from({ length: count }, () => true));
    expect(Math.min(...made.map(({ asked }) => asked))).toBeGreaterThan(0);
  });

  test('a worker whose planner fails ends the run', async () => {
    const { make, made } = channelWorkers((port) => {
      port.on('message', ({ id }: { id: number }) => port.postMessage({ id, bug: 'Error: bug' }));
    });
    await expect(allOf(planJobs(JOBS, { workers: webWorkers(make) }))).rejects.toMatchObject({
      code: 'WORKER_LOST',
      message: expect.stringContaining('Error: bug') as string,
    });
    expect(made[0]?.ended).toBe(true);
  });

  test('a worker that ends ends the run', async () => {
    const broken = (): WebWorker => ({
      postMessage: () => undefined,
      addEventListener: (type, listener) => {
        if (type === 'error') setTimeout(() => listener({}), 5);
      },
      terminate: () => undefined,
    });
    await expect(allOf(planJobs(JOBS, { workers: webWorkers(broken) }))).rejects.toMatchObject({
      code: 'WORKER_LOST',
    });
  });

  test('messages of others are left alone', async () => {
    const { make } = channelWorkers((port) => {
      port.postMessage('hello');
      port.postMessage({ id: 'hello' });
      port.postMessage({ id: 99, answer: {} });
      servePlans(port);
    });
    const results = await allOf(planJobs([{}], { workers: webWorkers(make) }));
    expect(results).toEqual([{ index: 0, outcome: tryPlanJob({}) }]);
  });

  test('what makes no worker is refused', () => {
    expect(() => webWorkers(5 as never)).toThrow(expect.objectContaining({ code: 'WRONG_TYPE' }));
  });
});
