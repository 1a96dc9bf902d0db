import type { Outcome } from '../attempt.js';
import type { JobPlan } from '../job/plan/plan.js';

/** The jobs: a list, or any other iterable, of job descriptions of unknown origin. */
export type Jobs = Iterable<unknown> | AsyncIterable<unknown>;

/** One planned job. */
export interface PlannedJob {
  /** Place of the job among those that were given, from 0. */
  readonly index: number;
  /** The plan, or the faults of the job. */
  readonly outcome: Outcome<JobPlan>;
}

/** How jobs are planned, and how many may be under way. */
interface Planner {
  readonly plan: (job: unknown) => Promise<Outcome<JobPlan>>;
  readonly window: number;
}

interface JobSource {
  next(): IteratorResult<unknown, unknown> | Promise<IteratorResult<unknown, unknown>>;
  return?(): unknown;
}

const sourceOf = (jobs: Jobs): JobSource =>
  Symbol.asyncIterator in jobs ? jobs[Symbol.asyncIterator]() : jobs[Symbol.iterator]();

/** Takes jobs, has them planned, and hands on the results as they come. Internal. */
export class JobRun {
  readonly #source: JobSource;
  readonly #planner: Planner;
  readonly #results: PlannedJob[] = [];
  #taken = 0;
  #handedOn = 0;
  #isTaking = false;
  #hasEnded = false;
  #failure: { readonly error: unknown } | undefined;
  #wake: () => void = () => undefined;

  constructor(jobs: Jobs, planner: Planner) {
    this.#source = sourceOf(jobs);
    this.#planner = planner;
  }

  /** The next result; undefined after the last. */
  async next(): Promise<PlannedJob | undefined> {
    for (;;) {
      if (this.#failure !== undefined) throw this.#failure.error;
      const result = this.#results.shift();
      if (result !== undefined) this.#handedOn += 1;
      this.#take();
      if (result !== undefined) return result;
      if (this.#hasEnded && this.#taken === this.#handedOn) return undefined;
      await new Promise<void>((resolve) => (this.#wake = resolve));
    }
  }

  /** Ends the run: whoever waits for a result gets the error. */
  readonly fail = (error: unknown): void => {
    this.#failure ??= { error };
    this.#wake();
  };

  /** Tells the source that no more is taken from it. A source that is late holds nobody up. */
  end(): void {
    if (this.#hasEnded) return;
    this.#hasEnded = true;
    this.#leaveSource().catch(() => undefined);
  }

  async #leaveSource(): Promise<void> {
    await this.#source.return?.();
  }

  /** Takes one job, if fewer than the window are under way and none is being taken. */
  #take(): void {
    const underWay = this.#taken - this.#handedOn;
    if (this.#hasEnded || this.#isTaking || underWay >= this.#planner.window) return;
    this.#isTaking = true;
    this.#takeOne().catch(this.fail);
  }

  async #takeOne(): Promise<void> {
    const { done, value }: IteratorResult<unknown, unknown> = await this.#source.next();
    this.#isTaking = false;
    if (done === true) this.#hasEnded = true;
    else if (!this.#hasEnded && this.#failure === undefined) {
      void this.#plan(value, this.#taken++);
      this.#take();
    }
    this.#wake();
  }

  async #plan(job: unknown, index: number): Promise<void> {
    try {
      this.#results.push({ index, outcome: await this.#planner.plan(job) });
      this.#wake();
    } catch (error) {
      this.fail(error);
    }
  }
}
