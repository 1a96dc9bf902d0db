export { SOURCES, type Source, type SourceId, type SourceStatus } from './catalogue.js';
export type { ReferenceValue } from './reference-value.js';
export { CAUTIONS, type Caution, type CautionId } from './cautions.js';
export { LEAST_BASE_EXTENSION } from './base-extension-rule.js';
export { BED_LIMITS, type BedLimits } from './bed-limits.js';
export { GEOTEXTILE_OVERLAPS, type GeotextileOverlapRow } from './geotextile-overlaps.js';
export { GRADATIONS, type GradationName, type SieveLimits } from './gradations.js';
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
export { SAND_BULKING, type SandBulkingRow } from './sand-bulking.js';
export {
  CUT_UNIT_LIMITS,
  UNIT_SHAPE_GUIDES,
  UNIT_SHAPE_LIMITS,
  type UnitShapeGuide,
} from './unit-shape.js';
export { YIELD_LIMITS } from './yield-limits.js';
