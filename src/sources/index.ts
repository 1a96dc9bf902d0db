export { SOURCES, type SourceId } from './catalogue.js';
export type { Source, SourceStatus } from './source.js';
export type { ReferenceNumber, ReferenceValue } from './reference-value.js';
export { CAUTIONS, type Caution, type Cautioned, type CautionId } from './cautions.js';
export { CURVE_PRACTICE } from './curve-stakes.js';
export { LEAST_BASE_EXTENSION } from './base-extension-rule.js';
export { BED_LIMITS, type BedLimits } from './bed-limits.js';
export {
  FLEXIBLE_CHART,
  FLEXIBLE_EQUATION,
  LAYER_COEFFICIENTS,
  MODULUS_PER_CBR,
} from './flexible-pavements.js';
export { GEOTEXTILE_OVERLAPS, type GeotextileOverlapRow } from './geotextile-overlaps.js';
export {
  GRADATION_MISPRINTS,
  GRADATIONS,
  type GradationMisprint,
  type GradationName,
  type SieveLimits,
} from './gradations.js';
export {
  COMPACTION_METHOD,
  COMPACTION_MOISTURE,
  COMPACTION_PLANTS,
  FILLS,
  type CompactionPlant,
  type Fill,
  type PlantClass,
  type PlantLift,
} from './compaction-method.js';
export {
  COUNTY_FOUNDATIONS,
  FOUNDATION_ROADS,
  type FoundationRoad,
  type FoundationRow,
} from './foundations.js';
export {
  CONDUCTIVITY,
  CONDUCTIVITY_RANGE,
  FROST_FINES,
  FROST_GROUP_LIMITS,
  FROST_GROUPS,
  FROST_PENETRATION,
  FROST_SOILS,
  FROST_SUPPORT,
  FROST_SURFACES,
  SOIL_HEAT,
  SURFACE_FACTORS,
  THERMAL_SOILS,
  type ConductivityFigures,
  type FrostGroup,
  type FrostGroupLimit,
  type FrostSoil,
  type FrostSurface,
  type ThermalSoil,
} from './frost-figures.js';
export { LIFT_LIMITS } from './lift-limits.js';
export {
  CROSS_SLOPE_AIM,
  ROUTE_LIMITS,
  type RouteBand,
  type RouteEdition,
  type RouteLimits,
} from './route-limits.js';
export {
  RESERVOIR,
  RUNOFF_COEFFICIENTS,
  type RunoffRange,
  type RunoffSurface,
} from './water-figures.js';
export {
  AGGREGATE_WEIGHTS,
  OLD_PAVING_WEIGHTS,
  TRUCK_WEIGHTS,
  type OldPaving,
  type OldPavingWeight,
} from './material-weights.js';
export {
  BASE_ADJUSTMENT,
  FROST_BASE,
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
  DRIVE_GRADIENTS,
  DRIVEWAY_BREAK_LIMITS,
  LEVEL_CHANGE_LIMITS,
  SLOPE_LIMITS,
  SLOPE_PURPOSES,
  STEP_COMFORT,
  type SlopeLimits,
  type SlopePurpose,
} from './slope-limits.js';
export {
  COVERAGE_FACTOR,
  EARTH,
  MISCLOSURE_RULES,
  type MisclosureRuleValue,
} from './levelling-figures.js';
export {
  AXLE_GROUP_FORMULA,
  AXLE_LIMITS,
  type AxleLimitName,
  type AxleLimitSet,
} from './axle-limits.js';
export {
  DEPTH_GATES,
  EXCAVATION_DISTANCES,
  EXCAVATION_SLOPES,
  SHORT_TERM_SLOPE,
  SOIL_TYPES,
  type DepthGate,
  type DepthGateId,
  type SoilType,
} from './excavation-rules.js';
export { FILL_FACTORS, REPOSE_ANGLES, WHEEL_SCREEN } from './production.js';
export { SILICA_CONTROLS, type SilicaControl } from './silica-table.js';
export {
  TOLERANCE_SETS,
  type MinimumAndMaximum,
  type OverAndUnder,
  type OverLength,
  type ToleranceSet,
  type ToleranceSetName,
} from './tolerance-sets.js';
export {
  LEAST_ROOT_ZONE,
  ROOT_CUT_MARKS,
  ROOT_ZONE_RULES,
  type RootZoneRule,
} from './tree-rules.js';
export { LOCATE_COLOURS } from './locate-colours.js';
export { HAND_DIG_RATES, TOLERANCE_ZONES } from './utility-marks.js';
export { SAND_BULKING, type SandBulkingRow } from './sand-bulking.js';
export {
  CUT_UNIT_LIMITS,
  UNIT_SHAPE_GUIDES,
  UNIT_SHAPE_LIMITS,
  type UnitShapeGuide,
} from './unit-shape.js';
export { YIELD_LIMITS } from './yield-limits.js';
export type { SystemText } from './system-text.js';
