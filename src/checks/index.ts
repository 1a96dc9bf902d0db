export { straightedge, type EdgeContact, type Straightedge } from './straightedge.js';
export type { ProfileReadingInput } from './read-profile.js';
export { relativeCompaction, type RelativeCompaction } from './relative-compaction.js';
export {
  checkLevels,
  type CheckedLevel,
  type LevelCheck,
  type LevelReadingInput,
} from './check-levels.js';
export {
  checkThickness,
  type ThicknessCheck,
  type ThicknessReadingInput,
} from './check-thickness.js';
export { checkFlatness, type CheckedGap, type FlatnessCheck } from './check-flatness.js';
export {
  checkLippage,
  type LippageCheck,
  type LippagePlace,
  type LippageReadingInput,
} from './check-lippage.js';
export {
  checkJointWidth,
  type JointReadingInput,
  type JointWidthCheck,
} from './check-joint-width.js';
export {
  checkBondLine,
  type BondLineCheck,
  type BondReadingInput,
  type CheckedBond,
} from './check-bond-line.js';
export {
  checkFall,
  type CheckedFall,
  type FallCheck,
  type FallReadingInput,
} from './check-fall.js';
export {
  checkCompaction,
  type CheckedDensity,
  type CompactionCheck,
  type CompactionTest,
  type DensityReadingInput,
} from './check-compaction.js';
export { trialStrip, type TrialReadingInput, type TrialStrip } from './trial-strip.js';
export { describeCheckMove } from './describe-check-move.js';
export type {
  CheckAction,
  CheckedReading,
  CheckKind,
  CheckMove,
  LayerCheck,
} from './layer-check.js';
export type {
  BandInput,
  Between,
  BetweenInput,
  OverLengthInput,
  SetWith,
  ToleranceOrigin,
} from './tolerance.js';
export type { Verdict } from '../verdict.js';
export {
  layerReport,
  type LayerReport,
  type ReportedCheck,
  type ReportedReading,
  type ReportedSource,
  type ReportedStep,
  type ReportedValue,
} from './layer-report.js';
export type { AnyLayerCheck } from './report-words.js';
export type { ReportSystem } from './print-amount.js';
