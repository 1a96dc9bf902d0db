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
  jobJsonSchema,
  jobSchema,
  planFromJSON,
  planJob,
  renderJobSheet,
  renderWorking,
  tryPlanJob,
  type JobInput,
  type JobPlan,
} from './job/index.js';
export { outlineArea, widenOutline, type OutlineInput } from './outline/index.js';
export { SOURCES, type Source, type SourceId } from './sources/index.js';
export { checkStakeLine, fitLine, type StakeLine } from './stakes/index.js';
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
