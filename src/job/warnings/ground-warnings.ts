import type { PavementPlan, PlanWarning } from '../plan/plan.js';
import type { ReadJob } from '../schema/job-shape.js';
import { warning } from './warning.js';

/** What frost, drains and the machine mean for a pavement; none if the job says nothing of the ground. Internal. */
export function groundBlockWarnings(job: ReadJob, plan: PavementPlan): PlanWarning[] {
  const { name, ground } = plan;
  if (ground === null) return [];
  const found: PlanWarning[] = [];
  const { frost, runoff, lifts, thickestLift } = ground;
  if (frost !== null && !frost.intoSubgrade.isZero() && frost.group !== 'NFS') {
    const into = frost.intoSubgrade;
    found.push(warning('FROST_IN_SUBGRADE', name, { depth: frost.depth, into }));
    if (!plan.frost) found.push(warning('FROST_NOT_SAID', name, { into }));
  }
  const base = ground.thicknesses.find(({ part }) => part === 'base');
  const limited = base?.rules.find(({ rule }) => rule === 'frost-limited');
  if (base !== undefined && limited?.shortfall.isZero() === false && frost?.group !== 'NFS') {
    const values = { got: base.planned, wanted: limited.thickness };
    found.push(warning('BASE_BELOW_FROST_RULE', name, values));
  }
  const inlet = job.ground?.storm?.inlet;
  if (runoff !== null && inlet !== undefined && runoff.greaterThan(inlet)) {
    found.push(warning('RUNOFF_OVER_INLET', name, { runoff, inlet }));
  }
  const barred = lifts.filter(({ verdict }) => verdict === 'fail').map(({ lift }) => lift);
  if (barred.length > 0) {
    const values = { lifts: barred.join(', '), most: thickestLift ?? '' };
    found.push(warning('LIFT_BEYOND_PLANT', name, values));
  }
  return found;
}
