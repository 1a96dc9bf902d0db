export { planJobs, type PlanJobsOptions } from './plan-jobs.js';
export type { Jobs, PlannedJob } from './job-run.js';
export { planInWorker } from './plan-in-worker.js';
export type { JobWorkers, OpenWorkers } from './job-workers.js';
export type { StopSignal } from './stop-signal.js';
export { servePlans, type WorkerScope } from './serve-plans.js';
export { webWorkers, type WebWorker } from './web-workers.js';
