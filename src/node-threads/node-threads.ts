import { fault } from '../errors.js';
import type { JobWorkers } from '../many-jobs/job-workers.js';

/** What is used of the pool. */
interface Pool {
  readonly options: { readonly maxThreads: number };
  run(task: unknown, options: { readonly name: string }): Promise<unknown>;
  destroy(): Promise<void>;
}

interface PoolSettings {
  readonly filename: string;
  readonly minThreads?: number;
  readonly maxThreads?: number;
}

/** What the language has of a module, and Node fills in. */
interface ModuleMeta {
  readonly resolve: (name: string) => string;
}

interface PoolModule {
  readonly Tinypool: new (settings: PoolSettings) => Pool;
}

/**
 * Threads of Node for `planJobs`: as many as its `concurrency`, else one for each processor. They are
 * kept by the package `tinypool`, an optional peer: `npm install tinypool`. Leave `settline` out of
 * a bundle that uses them.
 *
 * @param concurrency - number of threads, or null; `planJobs` passes its own on
 * @returns the threads; `planJobs` ends them
 * @throws `PACKAGE_MISSING` if `tinypool` is not installed
 * @example
 * // for await (const { index, outcome } of planJobs(jobs, { workers: nodeThreads })) ...
 * typeof nodeThreads //=> 'function'
 */
export async function nodeThreads(concurrency: number | null): Promise<JobWorkers> {
  const { Tinypool } = await loadPool();
  const filename = (import.meta as unknown as ModuleMeta).resolve('settline/many-jobs');
  const pool = new Tinypool({
    filename,
    ...(concurrency === null ? {} : { minThreads: concurrency, maxThreads: concurrency }),
  });
  return {
    size: pool.options.maxThreads,
    plan: (job) => pool.run(job, { name: 'planInWorker' }),
    close: () => pool.destroy(),
  };
}

async function loadPool(): Promise<PoolModule> {
  try {
    return await import('tinypool');
  } catch (error) {
    const { code } = error as { readonly code?: unknown };
    if (code !== 'ERR_MODULE_NOT_FOUND' && code !== 'MODULE_NOT_FOUND') throw error;
    const message = 'threads need the package tinypool. Install it: npm install tinypool';
    throw fault('PACKAGE_MISSING', message, { package: 'tinypool' });
  }
}
