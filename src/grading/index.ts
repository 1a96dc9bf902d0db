export {
  gradeLine,
  type GradeAt,
  type GradeBreak,
  type GradeLine,
  type GradeLineOptions,
  type GradeSegment,
} from './grade-line.js';
export {
  bentGrade,
  type BentGrade,
  type BentGradeAt,
  type BentGradeLeg,
  type BentGradeOptions,
  type BentLevelInput,
  type GradeBend,
  type GradeReach,
} from './bent-grade.js';
export type {
  FixedPointInput,
  GradedPointInput,
  GradePoint,
  GradePointInput,
} from './grade-points.js';
export {
  requiredStakes,
  type NamedPlaceInput,
  type RequiredStake,
  type RequiredStakes,
  type RequiredStakesOptions,
} from './required-stakes.js';
export type { StakeReason, StakeReasonKind } from './stake-reasons.js';
export { planeThrough, type PlanePointInput, type PlaneThroughOptions } from './plane-through.js';
export type { Plane, PlaneAt, PlaneResidual } from './plane.js';
export type { Fall } from './fall-of.js';
export type { PlanPointInput, SurfacePoint, SurfacePointInput } from './read-points.js';
export {
  warpedSurface,
  type PaverSizeInput,
  type WarpedCorner,
  type WarpedCornersInput,
  type WarpedPlaceInput,
  type WarpedSurface,
  type WarpedSurfaceOptions,
} from './warped-surface.js';
export type { WarpedAt, WarpedGrades } from './warped-at.js';
export { valleyLine, type ValleyLine, type ValleyLineOptions } from './valley-line.js';
export type { PlaneInput } from './plane-input.js';
export type { LineStake } from './edge-crossings.js';
export { combineSlopes, type CombinedSlope, type CombineSlopesOptions } from './combine-slopes.js';
export { slopesAlong, type SlopesAlong, type SlopesAlongOptions } from './slopes-along.js';
export {
  checkSlope,
  type CheckSlopeOptions,
  type SlopeCheck,
  type SlopeLimitsInput,
} from './check-slope.js';
export type { SlopeLimitCheck } from './slope-limit.js';
export { fallBetween, type FallBetween, type FallBetweenOptions } from './fall-between.js';
export { rampRun, type RampRoom, type RampRun, type RampRunOptions } from './ramp-run.js';
export { levelChange, type LevelChange, type LevelChangeOptions } from './level-change.js';
export {
  sillClearance,
  type LevelAwayInput,
  type SillClearance,
  type SillClearanceOptions,
} from './sill-clearance.js';
export {
  stepLayout,
  type StepComfort,
  type StepLayout,
  type StepLayoutOptions,
} from './step-layout.js';
export {
  verticalCurve,
  type ChangePerInput,
  type CurveAt,
  type VerticalCurvePointInput,
  type VerticalCurve,
  type VerticalCurveOptions,
} from './vertical-curve.js';
export {
  gradeBreak,
  type BreakLimitInput,
  type BreakTransition,
  type GradeBreakCheck,
  type GradeBreakOptions,
  type VehicleInput,
} from './grade-break.js';
export type { BreakClearance } from './break-clearance.js';
export type { Verdict } from '../verdict.js';
