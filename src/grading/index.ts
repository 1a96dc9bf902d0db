export {
  gradeLine,
  type GradeAt,
  type GradeBreak,
  type GradeLine,
  type GradePoint,
  type GradePointInput,
  type GradeSegment,
} from './grade-line.js';
export {
  requiredStakes,
  type NamedPlaceInput,
  type RequiredStake,
  type RequiredStakes,
} from './required-stakes.js';
export type { StakeReason, StakeReasonKind } from './stake-reasons.js';
export { planeThrough, type PlanePointInput } from './plane-through.js';
export type { Plane, PlaneAt, PlaneResidual } from './plane.js';
export type { Fall } from './fall-of.js';
export type { PlanPointInput, SurfacePoint, SurfacePointInput } from './read-points.js';
export { fitPlane, type BulkPlane } from './fit-plane.js';
export {
  warpedSurface,
  type WarpedAt,
  type WarpedCorner,
  type WarpedPlaceInput,
  type WarpedSurface,
} from './warped-surface.js';
export { valleyLine, type PlaneInput, type ValleyLine } from './valley-line.js';
export type { LineStake } from './edge-crossings.js';
export { combineSlopes, type CombinedSlope } from './combine-slopes.js';
export { slopesAlong, type SlopesAlong } from './slopes-along.js';
export { checkSlope, type SlopeCheck, type SlopeLimitCheck } from './check-slope.js';
export { fallBetween, type FallBetween } from './fall-between.js';
export { rampRun, type RampRun } from './ramp-run.js';
export { levelChange, type LevelChange } from './level-change.js';
export { freeboard, type Freeboard } from './freeboard.js';
export { stepLayout, type StepLayout } from './step-layout.js';
export {
  verticalCurve,
  type CurveAt,
  type GradePointAt,
  type VerticalCurve,
} from './vertical-curve.js';
export {
  gradeBreak,
  type BreakClearance,
  type BreakTransition,
  type GradeBreakCheck,
  type VehicleInput,
} from './grade-break.js';
export type { Verdict } from '../verdict.js';
