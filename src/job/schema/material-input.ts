import type { LayingPattern } from '../../materials/pavers/pattern.js';
import type {
  AngleInput,
  DensityInput,
  LengthInput,
  MassInput,
  VolumeInput,
} from '../../units/construct.js';
import type { NumberInput } from '../../units/read-number.js';
import type { JobEdgeRestraintInput, JobGeotextileInput, JobJointSandInput } from './site-input.js';

/** A pack of stone or sand, by volume or by mass. */
export interface JobPackInput {
  /** Name of a pack, such as yard, bag or truck. */
  readonly name: string;
  /** Loose volume of a pack; or give `mass`. */
  readonly volume?: VolumeInput;
  /** Mass of a pack; or give `volume`. */
  readonly mass?: MassInput;
  /** Minimum order, in packs. Default: none. */
  readonly minimum?: NumberInput;
}

/** A pack of pavers. */
export interface JobPaverPackInput {
  /** Name of a pack, such as band or pallet. */
  readonly name: string;
  /** Pavers in the smallest pack; in a larger pack, the number of packs of the size before. */
  readonly holds: NumberInput;
}

/** A material that comes loose and is compacted. */
export interface JobLooseInput {
  /** Short id for the layers to name, unique among the materials of the job. */
  readonly id: string;
  /** Name on the order. Default: the id. */
  readonly name?: string;
  /** Dry density, compacted in place. */
  readonly compactedDryDensity: DensityInput;
  /** Compacted over loose volume, 0.5 to 1, from a trial strip. */
  readonly compactedPerLoose: NumberInput;
  /** Water over dry mass, as a fraction. Default: 0. */
  readonly moisture?: NumberInput;
  /** Allowance added to the order, as a fraction. Default: 0. */
  readonly waste?: NumberInput;
  /** Pack in which it is sold. Optional. */
  readonly pack?: JobPackInput;
}

/** A stone for base, sub-base or fill. */
export interface JobStoneInput extends JobLooseInput {
  /** Maximum compacted lift for the machine. */
  readonly maxLift: LengthInput;
}

/** A sand for bedding. */
export interface JobSandInput extends JobLooseInput {
  /** Settlement of the bedding under the plate, from a trial: the screed and the pavers are set high by it. Default: none. */
  readonly settlement?: LengthInput;
}

/** A paver, to count what to order. */
export interface JobPaverInput {
  /** Short id for layers and borders to name, unique among the materials of the job. */
  readonly id: string;
  /** Name on the order. Default: the id. */
  readonly name?: string;
  /** Length of one paver, without its joint. */
  readonly length: LengthInput;
  /** Width of one paver, without its joint. */
  readonly width: LengthInput;
  /** Joint width. */
  readonly joint: LengthInput;
  /** Allowance for cuts and breakage, as a fraction; with a pattern, for breakage alone. Default: 0. */
  readonly breakage?: NumberInput;
  /** Laying pattern, to count cut pavers. Optional. */
  readonly pattern?: LayingPattern;
  /** Direction of the long side of the pavers, counter-clockwise from the x axis. Needs `pattern`. Default: along the x axis. */
  readonly axis?: AngleInput;
  /** Share of the off-cuts that are used, as a fraction. Needs `pattern`. Default: 0. */
  readonly reuse?: NumberInput;
  /** Packs, from the smallest up, 1 to 5. Optional. */
  readonly packs?: readonly JobPaverPackInput[];
}

/** The materials of a job, each described once. Layers and borders name them. */
export interface JobMaterialsInput {
  /** Stones for base, sub-base and fill, 1 to 20. */
  readonly stones: readonly JobStoneInput[];
  /** Sands for bedding, 1 to 20. */
  readonly sands: readonly JobSandInput[];
  /** Pavers to count, 1 to 50. Default: none, and no pavers are counted. */
  readonly pavers?: readonly JobPaverInput[];
  /** Id of the stone that fills low ground up to the subgrade. Default: the stone of the lowest layer. */
  readonly fill?: string;
  /** Joint sand. Optional. */
  readonly jointSand?: JobJointSandInput;
  /** Edge restraint. Optional. */
  readonly edgeRestraint?: JobEdgeRestraintInput;
  /** Geotextile under the base. Optional. */
  readonly geotextile?: JobGeotextileInput;
}

/** The soil to dig. */
export interface JobSoilInput {
  /** Bank density: in place, including water. */
  readonly bankDensity: DensityInput;
  /** Loose over bank volume, 0.9 to 3. */
  readonly loosePerBank: NumberInput;
  /** Compacted over bank volume, 0.4 to 2. */
  readonly compactedPerBank: NumberInput;
}

/** The truck that hauls. */
export interface JobTruckInput {
  /** Volume of the box, filled level. */
  readonly boxVolume: VolumeInput;
  /** Legal payload. */
  readonly payload: MassInput;
}
