import type { LengthInput, SlopeInput } from '../../units/construct.js';
import type {
  JobBeddingInput,
  JobPaverInput,
  JobSoilInput,
  JobStoneInput,
  JobTruckInput,
} from './material-input.js';
import type { JobLevelBookInput, JobLevellingInput } from './level-input.js';
import type { JobPavementInput, SpotHeightsInput } from './pavement-input.js';
import type {
  JobExcavationInput,
  JobSuppliesInput,
  JobTreeInput,
  JobUtilityInput,
} from './site-input.js';
import type { JobStringLineInput } from './string-line-input.js';

/**
 * The description of a job, as it is written in a job file: strict (an unknown field is a fault),
 * every length, area, mass and slope with its unit.
 */
export interface JobInput {
  /** Version of the file format: 1. */
  readonly version: 1;
  /** Name of the site. */
  readonly name: string;
  /** String above finished grade. */
  readonly stringHeight: LengthInput;
  /** How far a stake may be out of line. */
  readonly stakeTolerance: LengthInput;
  /** Minimum fall for drainage. Default: 2%, the published minimum. */
  readonly minimumFall?: SlopeInput;
  /** Width of the edge restraint outside the paving. Default: none. */
  readonly edgeRestraintWidth?: LengthInput;
  /** Dig beyond the base on open edges. Default: none. */
  readonly workingRoom?: LengthInput;
  /** Spot heights of the existing surface. Optional. */
  readonly existingLevels?: SpotHeightsInput;
  /** The instrument as it stands: one set-up for the day. Optional. */
  readonly levelling?: JobLevellingInput;
  /** A level book as it was kept. Optional. */
  readonly levelBook?: JobLevelBookInput;
  /** The pavements, 1 to 50. */
  readonly pavements: readonly JobPavementInput[];
  /** The strings, 1 to 200. */
  readonly stringLines: readonly JobStringLineInput[];
  /** Base and sub-base stone, and how it is placed. */
  readonly base: JobStoneInput;
  /** Bedding sand. */
  readonly bedding: JobBeddingInput;
  /** The pavers, to count them. Optional. */
  readonly paver?: JobPaverInput;
  /** What is ordered besides stone, sand and pavers, and the packs things are sold in. Optional. */
  readonly materials?: JobSuppliesInput;
  /** Marked lines: pipes, cables, ducts. At most 20. Optional. */
  readonly utilities?: readonly JobUtilityInput[];
  /** Trees near the dig. At most 200. Optional. */
  readonly trees?: readonly JobTreeInput[];
  /** What a competent person says about the ground. Optional. */
  readonly excavation?: JobExcavationInput;
  /** The soil that is dug. */
  readonly soil: JobSoilInput;
  /** The truck that hauls. */
  readonly truck: JobTruckInput;
}
