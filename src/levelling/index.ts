export { reduceLevels, type LevelBook, type LevelRow } from './reduce-levels.js';
export type { LevelRowInput } from './level-book.js';
export type { BookCheck, ReducedRow } from './reduce-rows.js';
export type { MisclosureRule } from './misclosure-rule.js';
export { allowableMisclosure, type AllowableMisclosure } from './allowable-misclosure.js';
export {
  spreadMisclosure,
  type AdjustedLevel,
  type LevelToAdjust,
  type SpreadMisclosure,
} from './spread-misclosure.js';
export { instrumentHeight, type InstrumentHeight } from './instrument-height.js';
export { rodTargets, type RodReach, type RodTarget, type RodTargets } from './rod-targets.js';
export { stakeRods, type RodStakeInput, type RodTable, type StakeRods } from './stake-rods.js';
export { cutFill, type CutFill } from './cut-fill.js';
export { describeCutFill } from './describe-cut-fill.js';
export { twoPegTest, type PegPairInput, type TwoPegTest } from './two-peg-test.js';
export {
  laserReversal,
  type AxisError,
  type LaserReversal,
  type ReversalMarksInput,
} from './laser-reversal.js';
export type { AccuracyInput } from './accuracy.js';
export { beamError, type BeamError } from './beam-error.js';
export { headingError, type HeadingError } from './heading-error.js';
export { gaugeBlock, type GaugeBlock } from './gauge-block.js';
export { rodTilt, type RodTilt } from './rod-tilt.js';
export {
  errorBudget,
  type ErrorBudget,
  type ErrorShare,
  type RandomErrorInput,
  type SystematicErrorInput,
} from './error-budget.js';
export {
  closeBenchmark,
  type BenchmarkCheck,
  type ClosedDay,
  type DayShot,
} from './close-benchmark.js';
export type { DayShotInput } from './day-shots.js';
export { curvatureRefraction, type CurvatureRefraction } from './curvature-refraction.js';
export type { Verdict } from '../verdict.js';
