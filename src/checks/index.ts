export {
  checkLevels,
  type CheckedLevel,
  type CheckLevelsOptions,
  type LevelCheck,
  type LevelReadingInput,
} from './check-levels.js';
export {
  checkThickness,
  type CheckThicknessOptions,
  type ThicknessCheck,
  type ThicknessByLevelsInput,
  type ThicknessByRodInput,
  type ThicknessInHoleInput,
  type ThicknessReadingInput,
} from './check-thickness.js';
export {
  checkFlatness,
  type CheckedGap,
  type CheckFlatnessOptions,
  type FlatnessCheck,
  type WithEdgeLength,
  type WithTolerance,
} from './check-flatness.js';
export type { EdgeContact, Straightedge } from './straightedge.js';
export type { BondReadingInput, ProfileReadingInput } from './line-readings.js';
export type { NamedReadingInput } from './reading-fields.js';
export {
  checkLippage,
  type CheckLippageOptions,
  type LippageCheck,
  type LippagePlace,
  type LippageReadingInput,
} from './check-lippage.js';
export {
  checkJointWidth,
  type CheckJointWidthOptions,
  type JointReadingInput,
  type JointWidthCheck,
} from './check-joint-width.js';
export {
  checkBondLine,
  type BondLineCheck,
  type CheckBondLineOptions,
  type CheckedBond,
} from './check-bond-line.js';
export {
  checkFall,
  type CheckedFall,
  type CheckFallOptions,
  type FallCheck,
  type FallReadingInput,
} from './check-fall.js';
export {
  checkCompaction,
  type CheckCompactionOptions,
  type CheckedDensity,
  type CompactionCheck,
  type CompactionTest,
  type DensityReadingInput,
  type MinimumPercentInput,
} from './check-compaction.js';
export {
  relativeCompaction,
  type RelativeCompaction,
  type RelativeCompactionOptions,
} from './relative-compaction.js';
export {
  trialStrip,
  type RatioRange,
  type TrialLevelsInput,
  type TrialReadingInput,
  type TrialStrip,
  type TrialStripOptions,
  type TrialThicknessInput,
} from './trial-strip.js';
export { describeCheckMove } from './describe-check-move.js';
export type {
  CheckAction,
  CheckedReading,
  CheckKind,
  CheckMove,
  LayerCheck,
} from './layer-check.js';
export type { BetweenInput, Limits } from './limits.js';
export type { BandInput, OverLengthInput, SetWith, ToleranceOrigin } from './tolerance.js';
export type { Verdict } from '../verdict.js';
export {
  layerReport,
  type LayerReport,
  type LayerReportOptions,
  type ReportedCheck,
  type ReportedReading,
  type ReportedSource,
  type ReportedStep,
  type ReportedValue,
} from './layer-report.js';
export type { AnyLayerCheck } from './report-words.js';
export type { ReportSystem } from './print-amount.js';
