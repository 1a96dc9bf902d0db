import type { LayingPattern } from '../../materials/pavers/pattern.js';
import type {
  AngleInput,
  DensityInput,
  LengthInput,
  MassInput,
  VolumeInput,
} from '../../units/construct.js';
import type { NumberInput } from '../../units/read-number.js';

/** Bedding sand. */
export interface JobBeddingInput {
  /** Dry density, compacted in place. */
  readonly compactedDryDensity: DensityInput;
  /** Compacted over loose volume, 0.5 to 1, from a trial strip. */
  readonly compactedPerLoose: NumberInput;
  /** Water over dry mass, as a fraction. Default: 0. */
  readonly moisture?: NumberInput;
  /** Added to the order, as a fraction. Default: 0. */
  readonly waste?: NumberInput;
}

/** Base and sub-base stone, and how it is placed. */
export interface JobStoneInput extends JobBeddingInput {
  /** Thickest compacted lift the machine can compact. */
  readonly maxLift: LengthInput;
}

/** The pavers, to count them. */
export interface JobPaverInput {
  /** Length of a unit, without its joint. */
  readonly length: LengthInput;
  /** Width of a unit, without its joint. */
  readonly width: LengthInput;
  /** Joint width. */
  readonly joint: LengthInput;
  /** Added to the order, as a fraction: cuts and breakage; with a pattern, breakage alone. Default: 0. */
  readonly breakage?: NumberInput;
  /** The laying pattern, to count cut units. Optional. */
  readonly pattern?: LayingPattern;
  /** Direction of the long side of the units, counter-clockwise from the x axis. Default: along it. */
  readonly axis?: AngleInput;
  /** Share of the off-cuts that find a place. Default: 0. */
  readonly reuse?: NumberInput;
}

/** The soil that is dug. */
export interface JobSoilInput {
  /** Bank density: in place, water included. */
  readonly bankDensity: DensityInput;
  /** Loose over bank volume, 0.9 to 3. */
  readonly loosePerBank: NumberInput;
  /** Compacted over bank volume, 0.4 to 2. */
  readonly compactedPerBank: NumberInput;
}

/** The truck that hauls. */
export interface JobTruckInput {
  /** What the box holds, level. */
  readonly boxVolume: VolumeInput;
  /** Legal payload. */
  readonly payload: MassInput;
}
