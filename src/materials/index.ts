export { baseStone, type BasePart, type BasePartInput, type BaseStone } from './base-stone.js';
export { bedRange, type BaseDeviationInput, type BedRange, type BedReading } from './bed-range.js';
export { beddingSand, type BeddingSand, type RisingSandInput } from './bedding-sand.js';
export { LAYING_PATTERNS, type LayingPattern } from './pattern.js';
export type { UnitInput } from './read-unit.js';
export { sandBulking, type SandBulking } from './sand-bulking.js';
export { describeScreedLevel, screedLevel, type ScreedLevel } from './screed-level.js';
export type { DryDensityInput } from './stone-density.js';
export type { TapeSystem } from './tape-text.js';
export { unitCount, type CutEdgeInput, type UnitCount } from './unit-count.js';
export type { Verdict } from '../verdict.js';
export { yieldCheck, type TicketInput, type YieldCheck } from './yield-check.js';
export { borderCourse, type BorderCorner, type BorderCourse } from './border-course.js';
export type { BorderSide } from './border-geometry.js';
export { COURSES, type Course } from './course.js';
export { outlineEdges, type OutlineEdge } from './outline-edges.js';
export { bondDrift, type BondDrift } from './bond-drift.js';
export { describeRowFit } from './describe-row-fit.js';
export { herringboneLines, type HerringboneLines } from './herringbone-lines.js';
export { jointSand, type JointSand } from './joint-sand.js';
export { jointTopUp, type JointTopUp } from './joint-top-up.js';
export { rowFit, type RowFit } from './row-fit.js';
export type { RowOption } from './row-options.js';
export { soldierCurve, type CurveAtRadius, type SoldierCurve } from './soldier-curve.js';
export { unitMass, type PalletInput, type UnitMass } from './unit-mass.js';
export { unitSuitability, type ShapeFinding, type UnitSuitability } from './unit-suitability.js';
export {
  edgeRestraint,
  type EdgeRestraint,
  type RestraintRun,
  type RestraintRunInput,
} from './edge-restraint.js';
export { geotextile, type Geotextile, type GeotextileLaying } from './geotextile.js';
export { geotextileOverlap, type GeotextileOverlap } from './geotextile-overlap.js';
export {
  checkGradation,
  type GradationCheck,
  type SieveFinding,
  type SieveLimitsInput,
  type SievePassingInput,
} from './check-gradation.js';
export {
  orderPacks,
  type OrderPacks,
  type OrderRules,
  type PackCount,
  type PackInput,
} from './order-packs.js';
