export {
  materialList,
  type Amount,
  type MaterialLine,
  type MaterialList,
  type MaterialName,
} from './order/material-list.js';
export { jobJsonSchema, jobSchema, type EdgeKind, type JobInput } from './schema/schema.js';
export { planJob, tryPlanJob } from './plan-job.js';
export { planFromJSON } from './plan-from-json.js';
export type {
  DeepestPlan,
  DigPlan,
  DigRing,
  EarthworkPlan,
  EdgePlan,
  GradeLevelPlan,
  GradePlan,
  GradeStretchPlan,
  JobPlan,
  JobTotals,
  LayerKind,
  LevellingPlan,
  LiftPlan,
  NearbyPlan,
  OldSurfacePlan,
  PaverPlan,
  PavementPlan,
  PlanSource,
  PlanStep,
  PlanWarning,
  RodPlan,
  SlopePlan,
  SpoilPlan,
  StakePlan,
  StreamPlan,
  StringLinePlan,
  SuppliesPlan,
  TreePlan,
  UtilityPlan,
  WarningCode,
} from './plan/plan.js';
export { renderJobSheet, type JobSheetOptions } from './sheet/render-job-sheet.js';
export { renderWorking } from './sheet/render-working.js';
export { describeMove, describeWarning } from './sheet/describe.js';
export type { SheetSystem } from './sheet/units-of-sheet.js';
export {
  checkJob,
  type CheckedStake,
  type JobCheck,
  type JobReadings,
  type NextStep,
  type SurfaceCheck,
} from './check/check-job.js';
export type { JobReadingInput } from './check/check-readings.js';
export type { SurfaceKind } from './plan/surfaces.js';
export { describeNextStep, describeStakeAction } from './sheet/describe-check.js';
export { renderCheckSheet } from './sheet/render-check-sheet.js';
