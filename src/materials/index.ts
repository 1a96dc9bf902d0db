export { unitCount, type UnitCount, type UnitCountOptions } from './pavers/unit-count.js';
export type { CutEdgeInput } from './pavers/cut-edges.js';
export { LAYING_PATTERNS, type LayingPattern } from './pavers/pattern.js';
export {
  outlineEdges,
  type OutlineEdge,
  type OutlineEdges,
  type OutlineEdgesOptions,
} from './pavers/outline-edges.js';
export type { UnitInput } from './pavers/unit.js';
export {
  unitMass,
  type PackedUnits,
  type PalletInput,
  type UnitMass,
  type UnitMassOptions,
} from './pavers/unit-mass.js';
export {
  unitSuitability,
  type ShapeFinding,
  type SmallestCutInput,
  type UnitSuitability,
  type UnitSuitabilityOptions,
} from './pavers/unit-suitability.js';
export { rowFit, type RowFit, type RowFitOptions } from './laying/row-fit.js';
export type { RowOption } from './laying/row-options.js';
export { describeRowFit } from './laying/describe-row-fit.js';
export { bondDrift, type BondDrift, type BondDriftOptions } from './laying/bond-drift.js';
export {
  herringboneLines,
  type HerringboneLines,
  type HerringboneLinesOptions,
} from './laying/herringbone-lines.js';
export {
  borderCourse,
  type BorderCorner,
  type BorderCourse,
  type BorderCourseOptions,
  type BorderField,
} from './border/border-course.js';
export type { BorderSide } from './border/border-geometry.js';
export type { BorderRun } from './border/border-runs.js';
export { COURSES, type Course } from './border/course.js';
export {
  soldierCurve,
  type CircleOfUnits,
  type CurveAtRadius,
  type SoldierCurve,
  type SoldierCurveOptions,
} from './border/soldier-curve.js';
// orders of stone are in volumes, with the volume states
export {
  baseOrder,
  type BaseOrder,
  type BaseOrderOptions,
  type BasePart,
  type BasePartInput,
} from '../volumes/base-order.js';
export type { DryDensityInput, WithDensity } from '../volumes/dry-density.js';
export {
  yieldCheck,
  type MoistTicketInput,
  type TicketInput,
  type YieldCheck,
  type YieldCheckOptions,
  type YieldLimitsInput,
} from './stone/yield-check.js';
export {
  beddingSand,
  type BeddingSand,
  type BeddingSandOptions,
  type RisingSandInput,
  type ScreededBed,
} from './bedding/bedding-sand.js';
export type { JarTestInput } from './bedding/bulking.js';
export {
  bedRange,
  type BaseDeviationInput,
  type BedRange,
  type BedRangeOptions,
  type BedReading,
} from './bedding/bed-range.js';
export {
  describeScreedLevel,
  screedLevel,
  type ScreedElevations,
  type ScreedLevel,
  type ScreedLevelOptions,
} from './bedding/screed-level.js';
export {
  checkGradation,
  type GradationCheck,
  type SieveFinding,
} from './bedding/check-gradation.js';
export type {
  CheckGradationOptions,
  SieveLimitsInput,
  SievePassingInput,
} from './bedding/read-gradation.js';
export type { FilledJoints, JointsInput } from './joints/fill-joints.js';
export { jointSand, type JointSand, type JointSandOptions } from './joints/joint-sand.js';
export { jointTopUp, type JointTopUp, type JointTopUpOptions } from './joints/joint-top-up.js';
export {
  edgeRestraint,
  type EdgeRestraint,
  type EdgeRestraintOptions,
  type RestraintRun,
  type RestraintRunInput,
  type SpecialRunInput,
} from './edging/edge-restraint.js';
export {
  geotextile,
  type Geotextile,
  type GeotextileLaying,
  type GeotextileOptions,
  type GeotextileOutlineOptions,
  type GeotextileOver,
  type GeotextileOverLaying,
  type GeotextileRollInput,
} from './fabric/geotextile.js';
export type { FabricDirection, FabricStrip } from './fabric/over-outline.js';
export {
  geotextileOverlap,
  type GeotextileOverlap,
  type GeotextileOverlapOptions,
} from './fabric/geotextile-overlap.js';
export {
  orderPacks,
  type LoadedPacks,
  type OrderPacks,
  type PackCount,
  type RoundedOrder,
} from './packs/order-packs.js';
export type {
  OrderAreaOptions,
  OrderLengthOptions,
  OrderMassOptions,
  OrderRules,
  OrderUnitsOptions,
  OrderVolumeOptions,
  PackInput,
} from './packs/read-order.js';
export type { LengthLimitsInput } from './length-limits.js';
export type { DescribeOptions, TapeSystem } from './tape-text.js';
export type { Verdict } from '../verdict.js';
