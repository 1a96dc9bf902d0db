export { SOURCES, type Source, type SourceId, type SourceStatus } from './catalogue.js';
export type { ReferenceValue } from './reference-value.js';
export { CAUTIONS, type Caution, type CautionId } from './cautions.js';
export { CURVE_PRACTICE } from './curve-stakes.js';
export { LEAST_BASE_EXTENSION } from './base-extension-rule.js';
export { LIFT_LIMITS } from './lift-limits.js';
export {
  AGGREGATE_WEIGHTS,
  OLD_PAVING_WEIGHTS,
  TRUCK_WEIGHTS,
  type OldPaving,
  type OldPavingWeight,
} from './material-weights.js';
export {
  BASE_ADJUSTMENT,
  MINIMUM_THICKNESS,
  PAVEMENT_USES,
  SUBGRADES,
  type BaseAdjustmentReason,
  type PavementUse,
  type Subgrade,
  type TwoEditions,
} from './minimum-thickness.js';
export { SOIL_STATE_FACTORS, type SoilFactorRow, type SoilName } from './soil-state-factors.js';
export { PAVER_TOLERANCES } from './surface-tolerances.js';
export {
  DAMP_PROOF_FREEBOARD,
  DRIVEWAY_BREAK_LIMITS,
  LEVEL_CHANGE_LIMITS,
  SLOPE_LIMITS,
  SLOPE_PURPOSES,
  STEP_COMFORT,
  type SlopeLimits,
  type SlopePurpose,
} from './slope-limits.js';
export { EARTH, MISCLOSURE_RULES, type MisclosureRuleValue } from './levelling-figures.js';
