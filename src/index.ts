export { attempt, type Outcome } from './attempt.js';
export {
  ERROR_CODES,
  isSettlineError,
  pathText,
  SettlineError,
  type ErrorCode,
  type FieldPath,
  type Issue,
} from './errors.js';
export type { Step, StepInput, StepValue, Worked } from './working.js';
export {
  baseExtension,
  buildUp,
  excavationDepth,
  lifts,
  minimumBuildUp,
  type BuildUp,
  type LayerInput,
} from './build-up/index.js';
export {
  checkJob,
  jobJsonSchema,
  jobSchema,
  materialList,
  planFromJSON,
  planJob,
  renderCheckSheet,
  renderJobSheet,
  renderWorking,
  tryPlanJob,
  type JobCheck,
  type JobInput,
  type JobPlan,
  type JobReadings,
  type MaterialList,
} from './job/index.js';
export { fitLine } from './geometry/index.js';
export { gradeLine, planeThrough, type GradeLine, type Plane } from './grading/index.js';
export { reduceLevels, rodTargets, type LevelBook } from './levelling/index.js';
export { outlineArea, widenOutline, type OutlineInput } from './outline/index.js';
export { SOURCES, type Source, type SourceId } from './sources/index.js';
export { checkStakeLine, type StakeLine } from './stakes/index.js';
export { stringDepths, type StringDepths } from './string-line/index.js';
export {
  angle,
  area,
  convert,
  density,
  force,
  formatLength,
  formatQuantity,
  fromJSON,
  length,
  mass,
  parseLength,
  pressure,
  roundTo,
  slope,
  volume,
  type Length,
  type LengthInput,
  type Quantity,
} from './units/index.js';
export {
  baseOrder,
  layerVolume,
  loads,
  stateVolume,
  toState,
  wholePacks,
  type StateVolume,
} from './volumes/index.js';
