export {
  materialList,
  type Amount,
  type MaterialLine,
  type MaterialList,
  type MaterialName,
} from './order/material-list.js';
export { readJob } from './read/read-job.js';
export { jobSchema } from './read/job-schema.js';
export { jobJsonSchema } from './schema/json-schema.js';
export type { JobInput, JobInput as Job } from './schema/job-input.js';
export type {
  EdgeKind,
  JobBorderInput,
  JobLayerInput,
  JobOldSurfaceInput,
  JobPavementInput,
  LayerKind,
  SpotHeightInput,
  SpotHeightsInput,
  SpotTableInput,
} from './schema/pavement-input.js';
export type { JobStakeInput, JobStringLineInput } from './schema/string-line-input.js';
export type {
  JobBenchmarkInput,
  JobClosingInput,
  JobFixedLevelInput,
  JobGradeInput,
  JobLevelBookInput,
  JobLevellingInput,
  JobLevelRowInput,
  JobMisclosureRuleInput,
} from './schema/level-input.js';
export type {
  JobBeddingInput,
  JobPaverInput,
  JobSoilInput,
  JobStoneInput,
  JobTruckInput,
} from './schema/material-input.js';
export type {
  JobEdgeRestraintInput,
  JobExcavationInput,
  JobGeotextileInput,
  JobJointSandInput,
  JobPackInput,
  JobPacksInput,
  JobPaverPackInput,
  JobPointInput,
  JobSuppliesInput,
  JobTreeInput,
  JobUtilityInput,
} from './schema/site-input.js';
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
export { renderJobSheet } from './sheet/render-job-sheet.js';
export type { DescribePartOptions, JobSheetOptions } from './sheet/sheet-options.js';
export { renderWorking, type RenderWorkingOptions } from './sheet/render-working.js';
export type { SubjectStep } from './sheet/is-steps.js';
export { describeMove, describeWarning } from './sheet/describe.js';
export type { SheetSystem } from './sheet/units-of-sheet.js';
export {
  checkJob,
  type CheckedStake,
  type JobCheck,
  type NextStep,
  type SurfaceCheck,
} from './check/check-job.js';
export type { JobReadings } from './check/read-job-readings.js';
export type { JobThicknessTolerances, JobTolerances } from './check/tolerance-fields.js';
export type { JobReadingInput } from './check/check-readings.js';
export type { SurfaceKind } from './plan/surfaces.js';
export {
  describeNextStep,
  describeStakeAction,
  type DescribeStakeActionOptions,
} from './sheet/describe-check.js';
export { renderCheckSheet } from './sheet/render-check-sheet.js';
