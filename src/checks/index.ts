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
  type BandInput,
  type ThicknessCheck,
  type ThicknessReadingInput,
} from './check-thickness.js';
export { describeCheckMove } from './describe-check-move.js';
export type {
  CheckAction,
  CheckedReading,
  CheckKind,
  CheckMove,
  LayerCheck,
} from './layer-check.js';
export type { Between, SetWith, ToleranceOrigin } from './tolerance.js';
export type { Verdict } from '../verdict.js';
