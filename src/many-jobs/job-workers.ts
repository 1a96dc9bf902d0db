/** Workers that plan jobs elsewhere: threads, web workers, other processes. */
export interface JobWorkers {
  /** Number of jobs that they plan at the same time; whole, from 1. */
  readonly size: number;
  /**
   * Has one job planned by `planInWorker`, where the workers are, and returns what that returned. The
   * job is a structured clone of what was given; what cannot be cloned never comes here.
   */
  plan(job: unknown): Promise<unknown>;
  /** Ends the workers, whatever they are doing. */
  close(): Promise<void> | void;
}

/**
 * Starts the workers: at the first result that is taken, never before. `concurrency` is as it was
 * given, or null.
 */
export type OpenWorkers = (concurrency: number | null) => JobWorkers | Promise<JobWorkers>;
