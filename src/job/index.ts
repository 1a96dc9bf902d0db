export {
  materialList,
  type Amount,
  type MaterialLine,
  type MaterialList,
  type MaterialName,
} from './material-list.js';
export { jobJsonSchema, jobSchema, type EdgeKind, type JobInput } from './schema.js';
export { planJob, tryPlanJob } from './plan-job.js';
export { planFromJSON } from './plan-from-json.js';
export type {
  DigPlan,
  EdgePlan,
  JobPlan,
  JobTotals,
  LiftPlan,
  OldSurfacePlan,
  PaverPlan,
  PavementPlan,
  PlanSource,
  PlanStep,
  PlanWarning,
  SlopePlan,
  SpoilPlan,
  StakePlan,
  StreamPlan,
  StringLinePlan,
  WarningCode,
} from './plan.js';
export { renderJobSheet, type JobSheetOptions } from './sheet/render-job-sheet.js';
export { renderWorking } from './sheet/render-working.js';
export { describeMove, describeWarning } from './sheet/describe.js';
export type { SheetSystem } from './sheet/units-of-sheet.js';
