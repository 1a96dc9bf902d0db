import { planJob, type JobPlan } from 'settline/job';
import { cedarCourtJob } from './cedar-court.js';
import { heronYardJob } from './heron-yard.js';
import { millGarthJob } from './mill-garth.js';
import { slateWharfJob } from './slate-wharf.js';

/** The plans of the four examples, by name. */
export const builtInPlans = (): readonly (readonly [name: string, plan: JobPlan])[] => [
  ['Cedar Court', planJob(cedarCourtJob())],
  ['Heron Yard', planJob(heronYardJob())],
  ['Mill Garth', planJob(millGarthJob())],
  ['Slate Wharf', planJob(slateWharfJob())],
];

/** A plan as it is saved, and read by `JSON.parse`. */
export const savedPlan = (plan: JobPlan): unknown => JSON.parse(JSON.stringify(plan));
