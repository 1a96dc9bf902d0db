// What the job page asks of the library; loaded when the page is shown.
import type { Outcome } from 'settline/errors';
import {
  checkJob,
  renderCheckSheet,
  renderJobSheet,
  tryPlanJob,
  type JobPlan,
  type JobReadings,
} from 'settline/job';
import { attempt } from 'settline/errors';
import type { UnitSystem } from 'settline/units';
import type { Json } from '../page/json-text.js';

export { drawingsElement } from './drawings-view.js';
export { figuresElement } from './figures-view.js';
export { orderElement } from './order-view.js';
export { readingsStart } from './readings-start.js';

/** Plans a job file as it was read from its text. */
export const planOf = (job: Json): Outcome<JobPlan> => tryPlanJob(job);

/** The sheet of a plan. */
export const sheetOf = (plan: JobPlan, system: UnitSystem): string =>
  renderJobSheet(plan, { system });

/** The sheet of the readings, or their faults. */
export const checkOf = (plan: JobPlan, readings: Json, system: UnitSystem): Outcome<string> =>
  attempt(() => renderCheckSheet(checkJob(plan, readings as unknown as JobReadings), { system }));
