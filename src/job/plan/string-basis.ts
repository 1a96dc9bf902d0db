import { entry, known } from '../../invariant.js';
import type { FieldPath } from '../../errors.js';
import type { StakeLine } from '../../stakes/check-stake-line.js';
import type { StringDepths } from '../../string-line/string-depths.js';
import type { Worked } from '../../working.js';
import type { ReadJob } from '../schema/job-shape.js';
import type { FinishSurface } from './finish-surface.js';
import type { PlannedSlope } from './plan-slopes.js';
import type { StringLinePlan } from './plan-of-strings.js';
import type { LevellingPlan, PavementPlan } from './plan.js';
import type { StakesById, StringLine } from './stake-grounds.js';

/** The pavement and the levels of a string. Internal. */
export interface LineBasis {
  readonly pavement: ReadJob['pavements'][number];
  readonly planned: PavementPlan;
  /** Finished grade through fixed levels; null if the stakes give it. */
  readonly surface: FinishSurface | null;
  readonly levelling: LevellingPlan | null;
  readonly stakes: StakesById;
}

/** What the working of a string is placed with. Internal. */
export interface StringBasis {
  readonly job: ReadJob;
  readonly line: StringLine;
  readonly plan: StringLinePlan;
  readonly planned: PavementPlan;
  readonly check: StakeLine;
  readonly depths: StringDepths;
  readonly slopes: readonly PlannedSlope[];
  readonly sags: readonly Worked[];
  readonly basis: LineBasis;
}

/** Path of a stake's field in the job. Internal. */
export const stakeOfJob = ({ job }: StringBasis, id: string, field: string): FieldPath => [
  'job',
  'stakes',
  job.stakes.findIndex((stake) => stake.id === id),
  field,
];

/** Path of the pavement of a string, in plan or job. Internal. */
export const pavementAt = (
  { job, line }: StringBasis,
  root: 'plan' | 'job',
  ...path: FieldPath
): FieldPath => [
  root,
  'pavements',
  job.pavements.findIndex(({ id }) => id === line.pavement),
  ...path,
];

/** A coordinate of a stake. Internal. */
export const stakeAt = ({ job, plan }: StringBasis, k: number, axis: 'x' | 'y') => {
  const { id } = entry(plan.stakes, k);
  return known(
    job.stakes.find((stake) => stake.id === id),
    'stake',
  )[axis];
};
