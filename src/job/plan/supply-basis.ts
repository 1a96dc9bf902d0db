import type { FieldPath } from '../../errors.js';
import type { ReadJob } from '../schema/job-shape.js';
import type { Pavement } from '../schema/layer-kinds.js';
import type { Paver } from './materials.js';
import type { PavementPlan } from './plan.js';
import type { PlannedSupplies } from './plan-supplies.js';

/** What the working of supplies is placed with. Internal. */
export interface SupplyBasis {
  readonly job: ReadJob;
  readonly pavement: Pavement;
  readonly plan: PavementPlan;
  readonly paver: Paver | null;
  readonly made: PlannedSupplies;
}

type Materials = 'jointSand' | 'edgeRestraint' | 'geotextile';

/** Path of a field of the materials in the job. Internal. */
export const inJob = (material: Materials, field: string): FieldPath => [
  'job',
  'materials',
  material,
  field,
];

/** Path of a field of the supplies. Internal. */
export const at = (...path: FieldPath): FieldPath => ['supplies', ...path];
