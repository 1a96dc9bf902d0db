import type { PlanWarning } from '../../plan/plan.js';
import type { ReadJob } from '../../schema/job-shape.js';
import { edgeNames } from '../sections/corners.js';

/** A warning with its edge as the sheet names it: `3 (C-D)` for 3. Internal. */
export function withEdgeName(warning: PlanWarning, job: ReadJob): PlanWarning {
  const { edge } = warning.values;
  if (typeof edge !== 'number') return warning;
  const own = job.pavements.filter(({ id, name }) => (name ?? id) === warning.subject);
  const [pavement] = own;
  // two pavements of one name: there is no telling which is meant
  if (pavement === undefined || own.length > 1) return warning;
  const name = edgeNames(pavement.outline)[edge - 1];
  return name === undefined ? warning : { ...warning, values: { ...warning.values, edge: name } };
}
