import { number, optional, quantity, whole } from '../../input/field.js';
import {
  BOX,
  FILL_FACTOR,
  FLOW,
  MACHINE_PART,
  OVERLAP,
  PASSES,
  SHARE,
  SPEED,
  TIME,
  TIME_OR_NONE,
} from '../../input/ranges.js';
import { shapeOf } from '../../input/shape.js';
import { part } from './part.js';
import type { JobHaulInput, JobMachineInput, JobPlateInput, JobRatesInput } from './rates-input.js';

const MACHINE = shapeOf<JobMachineInput>()({
  bucket: quantity(BOX),
  fillFactor: number(FILL_FACTOR),
  cycle: quantity(TIME),
  efficiency: number(SHARE),
});

const PLATE = shapeOf<JobPlateInput>()({
  width: quantity(MACHINE_PART),
  overlap: number(OVERLAP),
  speed: quantity(SPEED),
  efficiency: number(SHARE),
  passes: whole(PASSES),
  subgradePasses: optional(whole(PASSES)),
  paverPasses: optional(whole(PASSES)),
  jointPasses: optional(whole(PASSES)),
});

const HAUL = shapeOf<JobHaulInput>()({
  loadTime: quantity(TIME),
  haulTime: quantity(TIME_OR_NONE),
  dumpTime: quantity(TIME_OR_NONE),
  returnTime: quantity(TIME_OR_NONE),
});

/** How the rates of a job are read. Internal. */
export const RATES = shapeOf<JobRatesInput>()({
  machine: optional(part('JobMachineInput', MACHINE)),
  byHand: optional(quantity(FLOW)),
  plate: optional(part('JobPlateInput', PLATE)),
  haul: optional(part('JobHaulInput', HAUL)),
  delivery: optional(quantity(TIME)),
});
