export {
  checkStakeLine,
  type CheckStakeLineOptions,
  type StakeLine,
  type StakeLineEnds,
  type StakeOffset,
} from './check-stake-line.js';
export {
  checkStakeProfile,
  type CheckStakeProfileOptions,
  type StakeProfile,
  type StakeRise,
} from './check-stake-profile.js';
export { stakeOutliers, type StakeOutliers, type StakeOutliersOptions } from './stake-outliers.js';
export type { StakeAgainstOthers } from './stake-against-others.js';
export type { PlanPlaceInput, PlanStakeInput } from './plan-stake.js';
export type { ProfileStakeInput } from './profile-stake.js';
export type { MarkMove, StakeMove } from './stake-move.js';
export type { RowFinding } from './row-finding.js';
export {
  circleThrough,
  type CircleThrough,
  type CircleThroughOptions,
  type CurveMove,
  type CurvePointInput,
} from './circle-through.js';
export { arcFromChord, type ArcFromChord, type ArcFromChordOptions } from './arc-from-chord.js';
export {
  chordOffsets,
  type ChordOffset,
  type ChordOffsets,
  type ChordOffsetsOptions,
} from './chord-offsets.js';
export {
  tangentOffsets,
  type TangentOffset,
  type TangentOffsets,
  type TangentOffsetsOptions,
} from './tangent-offsets.js';
export {
  deflectionTable,
  type DeflectionRow,
  type DeflectionStep,
  type DeflectionTable,
  type DeflectionTableOptions,
} from './deflection-table.js';
export { fillet, type Fillet, type FilletOptions } from './fillet.js';
export type { CurveElements } from './curve-elements.js';
export { stakeSpacing, type StakeSpacing, type StakeSpacingOptions } from './stake-spacing.js';
export {
  checkSquare,
  type CheckSquareOptions,
  type SquareCheck,
  type SquareFault,
  type SquareMove,
} from './check-square.js';
export type { MeasuredSidesInput, SideError, SideName } from './four-sides.js';
export {
  checkCorner,
  type CheckCornerOptions,
  type CornerCheck,
  type CornerMove,
} from './check-corner.js';
export {
  threeFourFive,
  type BaseLineInput,
  type RightAngleMarks,
  type ThreeFourFive,
  type ThreeFourFiveOptions,
} from './three-four-five.js';
export { pointByTapes, type PointByTapes, type PointByTapesOptions } from './point-by-tapes.js';
export type { TapeInput } from './tapes.js';
export type { EllipseAxes, ErrorEllipse } from './error-ellipse.js';
export {
  planDistance,
  type HangingTapeInput,
  type PlanDistance,
  type PlanDistanceOptions,
} from './plan-distance.js';
export type { PlanPoint } from '../units/vector.js';
export type { Verdict } from '../verdict.js';
