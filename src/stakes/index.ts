export {
  checkStakeLine,
  type StakeLine,
  type StakeMove,
  type StakeOffset,
} from './check-stake-line.js';
export {
  checkStakeProfile,
  type MarkMove,
  type ProfileStakeInput,
  type StakeProfile,
  type StakeRise,
} from './check-stake-profile.js';
export { stakeOutliers, type StakeOutliers } from './stake-outliers.js';
export { profileOutliers, type ProfileOutliers } from './profile-outliers.js';
export type { OutlierTest, StakeAgainstOthers } from './outlier-row.js';
export {
  circleThrough,
  type CircleThrough,
  type CurveMove,
  type CurvePointInput,
} from './circle-through.js';
export { arcFromChord, type ArcFromChord } from './arc-from-chord.js';
export { chordOffsets, type ChordOffset, type ChordOffsets } from './chord-offsets.js';
export { tangentOffsets, type TangentOffset, type TangentOffsets } from './tangent-offsets.js';
export { deflectionTable, type DeflectionRow, type DeflectionTable } from './deflection-table.js';
export { fillet, type Fillet } from './fillet.js';
export type { CurveElements } from './curve-elements.js';
export { stakeSpacing, type StakeSpacing } from './stake-spacing.js';
export {
  checkSquare,
  type SquareCheck,
  type SquareFault,
  type SquareMove,
} from './check-square.js';
export { checkCorner, type CornerCheck, type CornerMove } from './check-corner.js';
export { threeFourFive, type BaseLineInput, type ThreeFourFive } from './three-four-five.js';
export { pointByTapes, type PointByTapes } from './point-by-tapes.js';
export type { TapeInput } from './read-tapes.js';
export type { ErrorEllipse } from './error-ellipse.js';
export { planDistance, type HangingTapeInput, type PlanDistance } from './plan-distance.js';
export type { SideName } from './four-sides.js';
export type { PlanStakeInput } from './read-stakes.js';
export type { PlanPoint } from '../units/vector.js';
export type { Verdict } from '../verdict.js';
