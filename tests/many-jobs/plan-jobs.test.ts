import { setTimeout as wait } from 'node:timers/promises';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { planJob, renderJobSheet, tryPlanJob, type Job, type JobPlan } from 'settline/job';
import {
  planInWorker,
  planJobs,
  type JobWorkers,
  type OpenWorkers,
  type PlannedJob,
} from 'settline/many-jobs';

const site = (name: string): Job =>
  JSON.parse(
    readFileSync(join(import.meta.dirname, '..', '..', 'examples', `${name}.json`), 'utf8'),
  ) as Job;
const CEDAR = site('cedar-court');
const SLATE = site('slate-wharf');

/** Workers that answer through a structured clone, and what was asked of them. */
function cloningWorkers(size: number, plan: (job: unknown) => unknown = planInWorker) {
  const seen = { opened: 0, closed: 0, asked: 0, under: 0, most: 0, concurrency: [] as unknown[] };
  const open: OpenWorkers = (concurrency) => {
    seen.opened += 1;
    seen.concurrency.push(concurrency);
    const workers: JobWorkers = {
      size,
      plan: async (job) => {
        seen.asked += 1;
        seen.most = Math.max(seen.most, (seen.under += 1));
        const sent = structuredClone(job);
        await wait(1);
        seen.under -= 1;
        return structuredClone(await plan(sent));
      },
      close: () => {
        seen.closed += 1;
      },
    };
    return workers;
  };
  return { open, seen };
}

async function allOf(results: AsyncIterable<PlannedJob>): Promise<PlannedJob[]> {
  const all: PlannedJob[] = [];
  for await (const one of results) all.push(one);
  return all;
}

const planOf = ({ outcome }: PlannedJob): JobPlan => {
  if (!outcome.ok) throw new Error(outcome.errors[0]?.message);
  return outcome.value;
};

/** A working as data: symbols, values and texts. */
const steps = (part: { readonly working: unknown }) => JSON.stringify(part.working);

describe('the results', () => {
  test('here: in order, each as planJob gives it', async () => {
    const results = await allOf(planJobs([CEDAR, {}, SLATE]));
    expect(results.map(({ index, outcome }) => [index, outcome.ok])).toEqual([
      [0, true],
      [1, false],
      [2, true],
    ]);
    expect(results[0]?.outcome).toEqual({ ok: true, value: planJob(CEDAR) });
    expect(results[1]?.outcome).toEqual(tryPlanJob({}));
  });

  test('by workers: equal to the letter, with every working, and printable', async () => {
    const { open } = cloningWorkers(2);
    for (const job of [CEDAR, SLATE]) {
      const [one] = await allOf(planJobs([job], { workers: open }));
      const [plan, expected] = [planOf(one ?? never()), planJob(job)];
      expect(plan).toEqual(expected);
      expect(plan.figures).toBe('planned');
      expect(JSON.stringify(plan) === JSON.stringify(expected)).toBe(true);
      expect(Object.isFrozen(plan)).toBe(true);
      expect(renderJobSheet(plan, { system: 'us' })).toBe(
        renderJobSheet(expected, { system: 'us' }),
      );
      expect(steps(plan)).toBe(steps(expected));
      expect(expected.working.length).toBeGreaterThan(10);
      const [own, other] = [plan.pavements[0]?.buildUp, expected.pavements[0]?.buildUp];
      expect(steps(own ?? never())).toBe(steps(other ?? never()));
      expect(Object.keys(own ?? {})).toEqual(Object.keys(other ?? {}));
    }
  });

  test('by workers: the faults of a job, and the other jobs all the same', async () => {
    const { open } = cloningWorkers(2);
    const faulty = { ...CEDAR, stringHeight: '15 lb' };
    const results = await allOf(planJobs([faulty, CEDAR], { workers: open }));
    const first = results.find(({ index }) => index === 0);
    expect(first?.outcome).toEqual(tryPlanJob(faulty));
    expect(first?.outcome.ok).toBe(false);
    expect(results).toHaveLength(2);
  });

  test('come as they are ready, each once, with their index', async () => {
    const slowFirst = async (job: unknown) => {
      if ((job as { slow?: boolean }).slow === true) await wait(60);
      return planInWorker({});
    };
    const { open } = cloningWorkers(2, slowFirst);
    const jobs = [{ slow: true }, {}, {}, {}];
    const order = (await allOf(planJobs(jobs, { workers: open }))).map(({ index }) => index);
    expect(order.at(-1)).toBe(0);
    expect([...order].sort()).toEqual([0, 1, 2, 3]);
  });

  test('a job that cannot be sent is planned here', async () => {
    const { open } = cloningWorkers(1);
    const odd = { ...CEDAR, name: () => 'Cedar Court' };
    const [one] = await allOf(planJobs([odd], { workers: open }));
    expect(one?.outcome).toEqual(tryPlanJob(odd));
  });

  test('a job that is written to after it was taken: the plan and its working stay', async () => {
    const { open } = cloningWorkers(1);
    const job = structuredClone(CEDAR) as { stringHeight: string };
    const results = planJobs([job], { workers: open })[Symbol.asyncIterator]();
    const next = results.next();
    await wait(0);
    const { value } = (await next) as { value: PlannedJob };
    job.stringHeight = '99 in';
    expect(steps(planOf(value))).toBe(steps(planJob(CEDAR)));
  });

  test('no jobs: no results', async () => {
    const { open, seen } = cloningWorkers(2);
    expect(await allOf(planJobs([], { workers: open }))).toEqual([]);
    expect([seen.opened, seen.closed]).toEqual([1, 1]);
  });
});

/** Invalid jobs, which are planned in no time, and how many were taken. */
function countedJobs(count: number) {
  const seen = { taken: 0, ended: false };
  function* jobs() {
    try {
      while (seen.taken < count) {
        seen.taken += 1;
        yield { number: seen.taken };
      }
    } finally {
      seen.ended = true;
    }
  }
  return { jobs: jobs(), seen };
}

describe('backpressure', () => {
  test('nothing is taken and nothing is started before the first result is asked for', async () => {
    const { jobs, seen } = countedJobs(5);
    const { open, seen: workers } = cloningWorkers(2);
    const results = planJobs(jobs, { workers: open });
    await wait(5);
    expect([seen.taken, workers.opened]).toEqual([0, 0]);
    await allOf(results);
    expect([seen.taken, workers.opened]).toEqual([5, 1]);
  });

  test.each([1, 3])('%i workers: at most two jobs each are ahead of the results', async (size) => {
    const { jobs, seen } = countedJobs(40);
    const { open, seen: workers } = cloningWorkers(size);
    let results = 0;
    for await (const { outcome } of planJobs(jobs, { workers: open, concurrency: 7 })) {
      expect(outcome.ok).toBe(false);
      results += 1;
      if (results % 8 === 0) await wait(15);
      expect(seen.taken).toBeLessThanOrEqual(results + 2 * size);
      if (results === 8) expect(seen.taken).toBe(8 + 2 * size);
    }
    expect(results).toBe(40);
    expect(workers.most).toBe(2 * size);
    expect(workers.concurrency).toEqual([7]);
  });

  test('here: one job is ahead', async () => {
    const { jobs, seen } = countedJobs(6);
    let results = 0;
    for await (const { index } of planJobs(jobs)) {
      expect(index).toBe(results);
      results += 1;
      await wait(3);
      expect(seen.taken).toBe(Math.min(results + 1, 6));
    }
    expect(results).toBe(6);
  });

  test('a slow source does not hold up a result that is there', async () => {
    async function* slow() {
      yield {};
      await wait(400);
      yield {};
    }
    const started = performance.now();
    for await (const { index } of planJobs(slow(), { workers: cloningWorkers(2).open })) {
      if (index === 0) expect(performance.now() - started).toBeLessThan(300);
    }
    expect(performance.now() - started).toBeGreaterThan(350);
  });
});

describe('the end', () => {
  test('break closes the workers and the source', async () => {
    const { jobs, seen } = countedJobs(100);
    const { open, seen: workers } = cloningWorkers(2);
    for await (const { index } of planJobs(jobs, { workers: open })) if (index >= 0) break;
    expect([seen.ended, workers.closed]).toEqual([true, 1]);
    expect(seen.taken).toBeLessThan(10);
  });

  test('a signal stops a waiting consumer at once, with its reason', async () => {
    const stuck = new Promise<never>(() => undefined);
    const { open, seen } = cloningWorkers(2, () => stuck);
    const { jobs, seen: source } = countedJobs(100);
    const controller = new AbortController();
    const reason = new Error('enough for today');
    setTimeout(() => controller.abort(reason), 10);
    const { signal } = controller;
    await expect(allOf(planJobs(jobs, { workers: open, signal }))).rejects.toBe(reason);
    expect([seen.closed, source.ended, source.taken]).toEqual([1, true, 4]);
  });

  test('a signal closes the workers also while the consumer is busy elsewhere', async () => {
    const { open, seen } = cloningWorkers(1);
    const controller = new AbortController();
    const { signal } = controller;
    const results = planJobs([{}, {}, {}], { workers: open, signal })[Symbol.asyncIterator]();
    expect((await results.next()).done).toBe(false);
    controller.abort();
    expect(seen.closed).toBe(1);
    await expect(results.next()).rejects.toMatchObject({ name: 'AbortError' });
    expect(seen.closed).toBe(1);
    expect(await results.next()).toEqual({ done: true, value: undefined });
  });

  test('a signal that has stopped starts nothing', async () => {
    const { open, seen } = cloningWorkers(1);
    const { jobs, seen: source } = countedJobs(3);
    const run = allOf(planJobs(jobs, { workers: open, signal: AbortSignal.abort('no') }));
    await expect(run).rejects.toBe('no');
    expect([seen.opened, source.taken]).toEqual([0, 0]);
  });

  test('here too a signal stops between two jobs', async () => {
    const controller = new AbortController();
    const { signal } = controller;
    let results = 0;
    const run = async () => {
      for await (const { index } of planJobs(countedJobs(1000).jobs, { signal })) {
        results = index + 1;
        if (results === 3) setTimeout(() => controller.abort(), 0);
      }
    };
    await expect(run()).rejects.toMatchObject({ name: 'AbortError' });
    expect(results).toBeGreaterThanOrEqual(3);
    expect(results).toBeLessThan(10);
  });

  test('a source that throws ends the run with its error, and the workers', async () => {
    const broken = new Error('the disk is full');
    const jobs = (function* () {
      yield {};
      throw broken;
    })();
    const { open, seen } = cloningWorkers(1);
    await expect(allOf(planJobs(jobs, { workers: open }))).rejects.toBe(broken);
    expect(seen.closed).toBe(1);
  });

  test('an error in a worker, or an answer of another kind, ends the run', async () => {
    const bug = new TypeError('a bug');
    const failing = cloningWorkers(1, () => Promise.reject(bug));
    await expect(allOf(planJobs([{}], { workers: failing.open }))).rejects.toBe(bug);
    expect(failing.seen.closed).toBe(1);
    for (const answer of [undefined, {}, { ok: false }, { ok: true, value: 5 }]) {
      const { open } = cloningWorkers(1, () => answer);
      await expect(allOf(planJobs([{}], { workers: open }))).rejects.toMatchObject({
        code: answer?.ok === true ? 'PLAN_INVALID' : 'WORKER_LOST',
      });
    }
  });
});

test.each([
  [{ signal: 5 }, 'WRONG_TYPE', ['signal']],
  [{ workers: 4 }, 'WRONG_TYPE', ['workers']],
  [{ workers: () => never(), concurrency: 0 }, 'NOT_POSITIVE', ['concurrency']],
  [{ workers: () => never(), concurrency: 1.5 }, 'NOT_WHOLE', ['concurrency']],
  [{ workers: () => never(), concurrency: 1025 }, 'OUT_OF_RANGE', ['concurrency']],
  [{ concurrency: 2 }, 'REQUIRED', ['workers']],
  [{ thread: 2 }, 'UNKNOWN_FIELD', ['thread']],
])('%j is refused at the call', (options, code, path) => {
  expect(() => planJobs([], options as never)).toThrow(expect.objectContaining({ code, path }));
});

test.each([[undefined], [null], ['jobs'], [{}]])('%j is no list of jobs', (jobs) => {
  expect(() => planJobs(jobs as never)).toThrow(expect.objectContaining({ code: 'WRONG_TYPE' }));
});

function never(): never {
  throw new Error('this is not reached');
}
