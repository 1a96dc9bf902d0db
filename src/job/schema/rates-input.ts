import type {
  FlowInput,
  LengthInput,
  SpeedInput,
  TimeInput,
  VolumeInput,
} from '../../units/construct.js';
import type { NumberInput } from '../../units/read-number.js';

/** The machine that digs. */
export interface JobMachineInput {
  /** Rated volume of the bucket. */
  readonly bucket: VolumeInput;
  /** Loose volume in the bucket over its rated volume, 0.3 to 1.5. */
  readonly fillFactor: NumberInput;
  /** Dig, swing, dump, return. */
  readonly cycle: TimeInput;
  /** Share of the hour at work, more than 0 and at most 1: a 50-minute hour is `50/60`. */
  readonly efficiency: NumberInput;
}

/** The plate or roller, and how often it passes. */
export interface JobPlateInput {
  /** Width of the plate or drum. */
  readonly width: LengthInput;
  /** Share of the width that overlaps the last lane, 0 to 0.9. */
  readonly overlap: NumberInput;
  /** Speed of travel. */
  readonly speed: SpeedInput;
  /** Share of the time in motion, more than 0 and at most 1: turns and edges lower it. */
  readonly efficiency: NumberInput;
  /** Passes over each lift of stone, 1 to 50, from a trial strip. */
  readonly passes: NumberInput;
  /** Passes over the subgrade, 1 to 50. Default: no hours are given for it. */
  readonly subgradePasses?: NumberInput;
  /** Passes over the pavers before the joint sand, 1 to 50. Default: no hours are given for them. */
  readonly paverPasses?: NumberInput;
  /** Passes over the pavers with the joint sand, 1 to 50. Default: no hours are given for them. */
  readonly jointPasses?: NumberInput;
}

/** The times of a truck that hauls away. */
export interface JobHaulInput {
  /** Time to fill one truck. */
  readonly loadTime: TimeInput;
  /** Time to drive to the tip, loaded. */
  readonly haulTime: TimeInput;
  /** Time at the tip, waiting included. */
  readonly dumpTime: TimeInput;
  /** Time to drive back, empty. */
  readonly returnTime: TimeInput;
}

/** How fast machine, hands, plate and trucks work: the crew's own figures, each optional. */
export interface JobRatesInput {
  /** The machine that digs. Optional. */
  readonly machine?: JobMachineInput;
  /** Soil that the crew digs by hand, bank volume over time. Optional. */
  readonly byHand?: FlowInput;
  /** The plate or roller. Optional. */
  readonly plate?: JobPlateInput;
  /** The truck that hauls away. Optional. */
  readonly haul?: JobHaulInput;
  /** Time of the truck for one delivery of stone or sand, there and back. Optional. */
  readonly delivery?: TimeInput;
}
