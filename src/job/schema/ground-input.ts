import type { CompactionPlant, Fill } from '../../sources/compaction-method.js';
import type { FrostGroup, FrostSurface, ThermalSoil } from '../../sources/frost-figures.js';
import type {
  AreaInput,
  DensityInput,
  FlowInput,
  LengthInput,
  MassInput,
  TimeInput,
} from '../../units/construct.js';
import type { NumberInput } from '../../units/read-number.js';

/** The freezing index of a job. */
export interface JobDegreeDaysInput {
  /** The number, 0 to 15 000. */
  readonly value: NumberInput;
  /** Degrees Celsius or Fahrenheit, times days. */
  readonly unit: 'C-days' | 'F-days';
}

/** A mean temperature of a job. */
export interface JobTemperatureInput {
  /** The number: 0 to 60 in degrees C, 32 to 140 in degrees F. */
  readonly value: NumberInput;
  /** Degrees Celsius or Fahrenheit. */
  readonly unit: 'C' | 'F';
}

/** The winter to plan for, and the soil that freezes. */
export interface JobFrostInput {
  /** Freezing index of the air to plan for. */
  readonly airIndex: JobDegreeDaysInput;
  /** Surface, for the share of that index it feels. Default: `concrete`, the nearest to pavers. */
  readonly surface?: FrostSurface;
  /** Length of the freezing season in days, more than 0 and at most 366. */
  readonly seasonDays: NumberInput;
  /** Mean temperature of the year, not below freezing. */
  readonly meanAnnual: JobTemperatureInput;
  /** Soil under the base: `sandy` or `silt-clay`. */
  readonly soil: ThermalSoil;
  /** Dry density of that soil. */
  readonly dryDensity: DensityInput;
  /** Water over dry mass of that soil, as a fraction, more than 0 and at most 1. */
  readonly moisture: NumberInput;
  /** Water over dry mass of the base in place, as a fraction, more than 0 and at most 1. */
  readonly baseMoisture: NumberInput;
}

/** The machine that compacts the lifts, for the published method of passes. */
export interface JobPlantInput {
  /** Kind of machine. */
  readonly plant: CompactionPlant;
  /** Its mass; for a roller the mass on one drum. */
  readonly mass: MassInput;
  /** Area of the base plate that touches the ground; of a plate only. */
  readonly plateArea?: AreaInput;
  /** Width of the drum; of a roller only. */
  readonly drumWidth?: LengthInput;
  /** Fill that it compacts. Default: `granular`. */
  readonly fill?: Fill;
}

/** A stone and the moisture at which it compacts best. */
export interface JobOptimumInput {
  /** Id of the stone in `materials`. */
  readonly stone: string;
  /** Optimum moisture of its laboratory test: water over dry mass, as a fraction 0 to 1. */
  readonly optimumMoisture: NumberInput;
  /** Moisture on the day, as a fraction 0 to 1. Default: that of the material. */
  readonly moisture?: NumberInput;
}

/** The storm that the drainage of a job is planned for. */
export interface JobStormInput {
  /** Depth of rain. */
  readonly depth: LengthInput;
  /** Time in which it falls. */
  readonly time: TimeInput;
  /** Share of the rain that runs off the paving, 0 to 1. Default: 0.85, the upper end for brick. */
  readonly coefficient?: NumberInput;
  /** Flow that the drain of each pavement takes. Default: it is not judged. */
  readonly inlet?: FlowInput;
}

/** What is known of the ground of a job; each part is optional. */
export interface JobGroundInput {
  /** Bearing ratio of the subgrade in percent, more than 0 and at most 200. Optional. */
  readonly cbr?: NumberInput;
  /** Frost group of the subgrade. Optional. */
  readonly frostGroup?: FrostGroup;
  /** The winter to plan for, and the soil that freezes. Optional. */
  readonly frost?: JobFrostInput;
  /** The machine that compacts the lifts. Optional. */
  readonly plant?: JobPlantInput;
  /** Stones with their optimum moisture, for the water of each lift. Optional. */
  readonly optimum?: readonly JobOptimumInput[];
  /** The storm that the drainage is planned for. Optional. */
  readonly storm?: JobStormInput;
}
