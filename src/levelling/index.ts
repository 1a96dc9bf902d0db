export {
  reduceLevels,
  type LevelBook,
  type LevelRow,
  type ReduceLevelsOptions,
} from './reduce-levels.js';
export type { LevelRowInput } from './level-book.js';
export type { BookCheck, ReducedRow } from './reduce-rows.js';
export type { MisclosureRule } from './misclosure-rule.js';
export {
  allowableMisclosure,
  type AllowableMisclosure,
  type AllowableMisclosureOptions,
} from './allowable-misclosure.js';
export {
  spreadMisclosure,
  type AdjustedLevel,
  type LevelToAdjust,
  type SpreadMisclosure,
  type SpreadMisclosureOptions,
} from './spread-misclosure.js';
export type { InstrumentHeightInput, SetUpInput } from './instrument-height.js';
export {
  rodTargets,
  type RodReach,
  type RodTarget,
  type RodTargets,
  type RodTargetsOptions,
} from './rod-targets.js';
export {
  stakeRods,
  type RodStakeInput,
  type RodTable,
  type StakeRods,
  type StakeRodsOptions,
} from './stake-rods.js';
export { cutFill, type CutFill, type CutFillOptions } from './cut-fill.js';
export { describeCutFill } from './describe-cut-fill.js';
export {
  twoPegTest,
  type PegRuleInput,
  type PegVerdict,
  type TwoPegTest,
  type TwoPegTestOptions,
} from './two-peg-test.js';
export type { PegPair, PegPairInput, PegSightsInput } from './peg-sights.js';
export {
  laserReversal,
  type AxisError,
  type LaserReversal,
  type LaserReversalOptions,
  type ReversalMarksInput,
} from './laser-reversal.js';
export type { AccuracyInput, BeamAngleInput, ErrorOverDistanceInput } from './accuracy.js';
export { beamError, type BeamError, type BeamErrorOptions } from './beam-error.js';
export {
  headingError,
  type HeadingError,
  type HeadingErrorOptions,
  type PlaceFromInstrumentInput,
} from './heading-error.js';
export { gaugeBlock, type GaugeBlock, type GaugeBlockOptions } from './gauge-block.js';
export { rodTilt, type LeanInput, type RodTilt, type RodTiltOptions } from './rod-tilt.js';
export {
  errorBudget,
  type ErrorBudget,
  type ErrorBudgetOptions,
  type ErrorShare,
  type RandomErrorInput,
  type SystematicErrorInput,
} from './error-budget.js';
export { closeBenchmark, type CloseBenchmarkOptions, type ClosedDay } from './close-benchmark.js';
export type { BenchmarkCheck } from './benchmark-checks.js';
export type { DayShot } from './adjusted-shots.js';
export type { DayShotInput } from './day-shots.js';
export {
  curvatureRefraction,
  type CurvatureRefraction,
  type CurvatureRefractionOptions,
} from './curvature-refraction.js';
export type { Verdict } from '../verdict.js';
