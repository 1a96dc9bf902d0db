import type { LengthInput, SlopeInput } from '../../units/construct.js';
import type { JobGroundInput } from './ground-input.js';
import type { JobMaterialsInput, JobSoilInput, JobTruckInput } from './material-input.js';
import type { JobLevelBookInput, JobLevellingInput } from './level-input.js';
import type { JobPavementInput, SpotHeightsInput } from './pavement-input.js';
import type { JobRatesInput } from './rates-input.js';
import type {
  JobExcavationInput,
  JobOldPavingInput,
  JobTreeInput,
  JobUtilityInput,
} from './site-input.js';
import type { JobStakeInput, JobStringInput, JobStringLineInput } from './string-line-input.js';

/**
 * The contents of a job file. An unknown field is a fault, and every length, area, mass and slope
 * needs a unit.
 */
export interface JobInput {
  /** Address of the JSON Schema of a job file, for editors. It is not used in calculations. Optional. */
  readonly $schema?: string;
  /** Version of the file format: 1. */
  readonly version: 1;
  /** Name of the site. */
  readonly name: string;
  /** Height of the string above finished grade. */
  readonly stringHeight: LengthInput;
  /** Maximum distance of a stake out of line. */
  readonly stakeTolerance: LengthInput;
  /** Minimum fall for drainage. Default: 2%, the published minimum. */
  readonly minimumFall?: SlopeInput;
  /** Width of the edge restraint outside the paving. Default: none. */
  readonly edgeRestraintWidth?: LengthInput;
  /** Width of the dig beyond the base on open edges. Default: none. */
  readonly workingRoom?: LengthInput;
  /** Step to which the sheet rounds up the distances for setting out the dig. Default: 1/4 in, metric 5 mm. */
  readonly setOutStep?: LengthInput;
  /** Weight and tension of the string, to work out its sag. Optional. */
  readonly string?: JobStringInput;
  /** Spot heights of the existing surface. Optional. */
  readonly existingLevels?: SpotHeightsInput;
  /** The level as set up for the day: one set-up. Optional. */
  readonly levelling?: JobLevellingInput;
  /** The level book, as written on site. Optional. */
  readonly levelBook?: JobLevelBookInput;
  /** Materials, each described once. */
  readonly materials: JobMaterialsInput;
  /** Stakes, each listed once, 2 to 10 000. */
  readonly stakes: readonly JobStakeInput[];
  /** Pavements, 1 to 50. */
  readonly pavements: readonly JobPavementInput[];
  /** Strings, 1 to 200. */
  readonly stringLines: readonly JobStringLineInput[];
  /** Old paving to strip, up to 100. Optional. */
  readonly oldPaving?: readonly JobOldPavingInput[];
  /** Marked lines: pipes, cables, ducts. Up to 20. Optional. */
  readonly utilities?: readonly JobUtilityInput[];
  /** Trees near the dig. Up to 200. Optional. */
  readonly trees?: readonly JobTreeInput[];
  /** A competent person's findings on the ground. Optional. */
  readonly excavation?: JobExcavationInput;
  /** Soil to dig. */
  readonly soil: JobSoilInput;
  /** Truck that hauls. */
  readonly truck: JobTruckInput;
  /** What is known of the ground: strength, frost, the machine, moisture, the storm. Optional. */
  readonly ground?: JobGroundInput;
  /** How fast machine, hands, plate and trucks work, for the hours of each step. Optional. */
  readonly rates?: JobRatesInput;
}
