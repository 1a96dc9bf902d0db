export {
  materialList,
  type Amount,
  type MaterialKind,
  type MaterialLine,
  type MaterialList,
} from './order/material-list.js';
export { workSteps } from './steps/work-steps.js';
export type {
  HoldPoint,
  WorkAmount,
  WorkCondition,
  WorkFigure,
  WorkHeight,
  WorkHours,
  WorkLoads,
  WorkStep,
  WorkStepKind,
} from './steps/work-step.js';
export {
  planUncertainty,
  type PlanUncertainty,
  type PlanUncertaintyOptions,
  type UncertainFigure,
} from './uncertainty/plan-uncertainty.js';
export { explain } from './explain/explain.js';
export type {
  Explanation,
  GivenExplanation,
  PublishedExplanation,
  ExplainedValue,
  StatedExplanation,
  WorkedExplanation,
} from './explain/explanation.js';
export { publishedFigures, type PublishedFigure } from './explain/published-figures.js';
export { renderUncertainty } from './sheet/render-uncertainty.js';
export { comparePlans } from './compare/compare-plans.js';
export type { ChangeSubject, PlanChange, PlanValue } from './compare/plan-change.js';
export { readJob } from './read/read-job.js';
export { jobSchema } from './read/job-schema.js';
export { jobJsonSchema } from './schema/json-schema.js';
export type { JobInput, JobInput as Job } from './schema/job-input.js';
export type {
  EdgeKind,
  JobBetweenStringsInput,
  JobBorderInput,
  JobEdgeInput,
  JobLayerInput,
  JobPavementInput,
  LayerKind,
  SpotHeightInput,
  SpotHeightsInput,
  SpotTableInput,
} from './schema/pavement-input.js';
export type {
  JobStakeInput,
  JobStringInput,
  JobStringLineInput,
} from './schema/string-line-input.js';
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
  JobLooseInput,
  JobMaterialsInput,
  JobPackInput,
  JobPaverInput,
  JobPaverPackInput,
  JobSandInput,
  JobSoilInput,
  JobStoneInput,
  JobTruckInput,
} from './schema/material-input.js';
export type {
  JobDegreeDaysInput,
  JobFrostInput,
  JobGroundInput,
  JobOptimumInput,
  JobPlantInput,
  JobStormInput,
  JobTemperatureInput,
} from './schema/ground-input.js';
export type {
  JobHaulInput,
  JobMachineInput,
  JobPlateInput,
  JobRatesInput,
} from './schema/rates-input.js';
export type {
  JobEdgeRestraintInput,
  JobExcavationInput,
  JobGeotextileInput,
  JobJointSandInput,
  JobOldPavingInput,
  JobPointInput,
  JobTreeInput,
  JobUtilityInput,
} from './schema/site-input.js';
export { planJob, tryPlanJob } from './plan-job.js';
export { planFromJSON, type PlanFromJSONOptions } from './plan-from-json.js';
export { readPlan } from './saved/read-plan.js';
export type {
  BetweenStringsPlan,
  DeepestPlan,
  DigPlan,
  DigRing,
  DigTopPlan,
  EarthPlan,
  EdgePlan,
  FrostPlan,
  GovernedThickness,
  GradeLevelPlan,
  GradePlan,
  GradeStretchPlan,
  JobPlan,
  JobTotals,
  LevellingPlan,
  LiftGroundPlan,
  LiftPlan,
  LooseOrderPlan,
  LooseTotalPlan,
  NearbyPlan,
  OldPavingPlan,
  OldPavingTotalPlan,
  PaverPlan,
  PaverTotalPlan,
  PavementGroundPlan,
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
  StringSagPlan,
  SuppliesPlan,
  SurfacePlan,
  ThicknessRule,
  TreePlan,
  UnitsPlan,
  UtilityPlan,
  WarningCode,
} from './plan/plan.js';
export { renderJobSheet } from './sheet/render-job-sheet.js';
export type { DescribePartOptions, JobSheetOptions } from './sheet/layout/sheet-options.js';
export { renderWorking, type RenderWorkingOptions } from './sheet/render-working.js';
export type { Placing } from './plan/placed.js';
export type { SubjectStep } from './sheet/is-steps.js';
export { describeWorkStep } from './sheet/words/work-step-words.js';
export { describeChange } from './sheet/words/change-words.js';
export { renderWorkSteps } from './sheet/sections/steps-section.js';
export {
  describeMove,
  describeWarning,
  type DescribeMoveOptions,
  type StakeFacing,
} from './sheet/words/describe.js';
export type { SheetSystem } from './sheet/layout/lengths-of-sheet.js';
export { checkJob, type JobCheck } from './check/check-job.js';
export type { CheckedStake, NextStep, SurfaceCheck } from './check/check-surface.js';
export type { NotChecked, PavementCheck } from './check/check-pavement.js';
export type { PlacedCheck, PlacedCheckResult } from './check/placed-check.js';
export type {
  JobBondLineInput,
  JobCompactionInput,
  JobFallInput,
  JobFlatnessInput,
  JobJointWidthInput,
  JobLippageInput,
  JobPlaceInput,
  JobPlacedReadings,
  JobSurfacePlaceInput,
} from './check/placed-input.js';
export type { JobReadings } from './check/read-job-readings.js';
export type { JobThicknessTolerances, JobTolerances } from './check/tolerance-fields.js';
export type { JobReadingInput } from './check/check-readings.js';
export type { SurfaceKind } from './plan/surface-kind.js';
export {
  describeNextStep,
  describeStakeAction,
  type DescribeStakeActionOptions,
} from './sheet/words/describe-check.js';
export { renderCheckSheet } from './sheet/check/render-check-sheet.js';
export { renderHandOver } from './sheet/check/render-hand-over.js';
