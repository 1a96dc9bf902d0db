import type { CheckBondLineOptions } from '../../checks/check-bond-line.js';
import type { CheckCompactionOptions } from '../../checks/check-compaction.js';
import type { CheckFallOptions } from '../../checks/check-fall.js';
import type { CheckFlatnessOptions } from '../../checks/check-flatness.js';
import type { CheckJointWidthOptions } from '../../checks/check-joint-width.js';
import type { CheckLippageOptions, LippagePlace } from '../../checks/check-lippage.js';

/** Where readings between the stakes were taken. */
export interface JobPlaceInput {
  /** Id of the pavement. */
  readonly pavement: string;
  /** Where on it, in your words: `along the garage`. Each place once in its list. */
  readonly place: string;
}

/** Where readings on one surface were taken; each place once on that surface. */
export interface JobSurfacePlaceInput extends JobPlaceInput {
  /** As the plan names it: `subgrade`, `lift 1 top`, `base top`, `bedding top`, `finished grade`. */
  readonly surface: string;
}

/** A straightedge profile: see `checkFlatness`. */
export interface JobFlatnessInput
  extends
    JobSurfacePlaceInput,
    Required<Pick<CheckFlatnessOptions, 'tolerance'>>,
    Pick<CheckFlatnessOptions, 'profile' | 'uncertainty'> {}

/** Density tests of a layer or of the subgrade: see `checkCompaction`. */
export interface JobCompactionInput
  extends JobSurfacePlaceInput, Omit<CheckCompactionOptions, 'layer'> {}

/** Falls of a surface: see `checkFall`. */
export interface JobFallInput extends JobSurfacePlaceInput, Omit<CheckFallOptions, 'layer'> {}

/** Lips of the finished surface: see `checkLippage`. */
export interface JobLippageInput extends JobPlaceInput, Omit<CheckLippageOptions, 'place'> {
  /** What the lips are between: `pavers`, or a paver and a `drain` or an `accessible-drain`. */
  readonly at: LippagePlace;
}

/** Widths of joints: see `checkJointWidth`. */
export interface JobJointWidthInput extends JobPlaceInput, CheckJointWidthOptions {}

/** A line of joints: see `checkBondLine`. */
export interface JobBondLineInput extends JobPlaceInput, Omit<CheckBondLineOptions, 'line'> {}

/** Readings between the stakes. */
export interface JobPlacedReadings {
  /** Density tests, up to 1000 places. Default: none. */
  readonly compaction?: readonly JobCompactionInput[];
  /** Straightedge profiles, up to 1000. Default: none. */
  readonly flatness?: readonly JobFlatnessInput[];
  /** Falls, up to 1000 places. Default: none. */
  readonly fall?: readonly JobFallInput[];
  /** Lips of the finished surface, up to 1000 places. Default: none. */
  readonly lippage?: readonly JobLippageInput[];
  /** Widths of joints, up to 1000 places. Default: none. */
  readonly jointWidth?: readonly JobJointWidthInput[];
  /** Lines of joints, up to 1000. Default: none. */
  readonly bondLine?: readonly JobBondLineInput[];
}
