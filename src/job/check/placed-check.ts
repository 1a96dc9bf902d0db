import type { BondLineCheck } from '../../checks/check-bond-line.js';
import type { CompactionCheck } from '../../checks/check-compaction.js';
import type { FallCheck } from '../../checks/check-fall.js';
import type { FlatnessCheck } from '../../checks/check-flatness.js';
import type { JointWidthCheck } from '../../checks/check-joint-width.js';
import type { LippageCheck } from '../../checks/check-lippage.js';
import type { SurfaceKind } from '../plan/surface-kind.js';

/** A check between the stakes, as its own function returns it. */
export type PlacedCheckResult =
  CompactionCheck | FlatnessCheck | FallCheck | LippageCheck | JointWidthCheck | BondLineCheck;

/** A check between the stakes, and where it was made. */
export interface PlacedCheck {
  /** Where on the pavement. */
  readonly place: string;
  /** Name of the surface; `finished grade` for lips and joints. */
  readonly surface: string;
  /** What the surface belongs to. */
  readonly kind: SurfaceKind;
  /** Verdict, readings, limits and their source. */
  readonly check: PlacedCheckResult;
}
