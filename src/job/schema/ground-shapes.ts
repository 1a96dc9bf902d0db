import { choice, list, number, optional, quantity } from '../../input/field.js';
import { BEARING, SEASON_DAYS } from '../../input/ground-ranges.js';
import {
  AREA,
  DENSITY,
  DEPTH_OR_NONE,
  FLOW,
  FRACTION,
  MACHINE_PART,
  PAYLOAD,
  RUNOFF,
  SHARE,
  TIME,
} from '../../input/ranges.js';
import { shapeOf } from '../../input/shape.js';
import { COMPACTION_PLANTS, FILLS } from '../../sources/compaction-method.js';
import { FROST_GROUPS, FROST_SURFACES, THERMAL_SOILS } from '../../sources/frost-figures.js';
import type {
  JobDegreeDaysInput,
  JobFrostInput,
  JobGroundInput,
  JobOptimumInput,
  JobPlantInput,
  JobStormInput,
  JobTemperatureInput,
} from './ground-input.js';
import { NAME } from './name-field.js';
import { part } from './part.js';

const DEGREE_DAYS = shapeOf<JobDegreeDaysInput>()({
  value: number({ sign: 'not-negative', most: 15_000, example: '900' }),
  unit: choice(['C-days', 'F-days']),
});

const TEMPERATURE = shapeOf<JobTemperatureInput>()({
  value: number({ sign: 'not-negative', most: 140, example: '7' }),
  unit: choice(['C', 'F']),
});

const FROST = shapeOf<JobFrostInput>()({
  airIndex: part('JobDegreeDaysInput', DEGREE_DAYS),
  surface: optional(choice(FROST_SURFACES)),
  seasonDays: number(SEASON_DAYS),
  meanAnnual: part('JobTemperatureInput', TEMPERATURE),
  soil: choice(THERMAL_SOILS),
  dryDensity: quantity(DENSITY),
  moisture: number(SHARE),
  baseMoisture: number(SHARE),
});

const PLANT = shapeOf<JobPlantInput>()({
  plant: choice(COMPACTION_PLANTS),
  mass: quantity(PAYLOAD),
  plateArea: optional(quantity(AREA)),
  drumWidth: optional(quantity(MACHINE_PART)),
  fill: optional(choice(FILLS)),
});

const OPTIMUM = shapeOf<JobOptimumInput>()({
  stone: NAME,
  optimumMoisture: number(FRACTION),
  moisture: optional(number(FRACTION)),
});

const STORM = shapeOf<JobStormInput>()({
  depth: quantity(DEPTH_OR_NONE),
  time: quantity(TIME),
  coefficient: optional(number(RUNOFF)),
  inlet: optional(quantity(FLOW)),
});

/** How the ground of a job is read. Internal. */
export const GROUND = shapeOf<JobGroundInput>()({
  cbr: optional(number(BEARING)),
  frostGroup: optional(choice(FROST_GROUPS)),
  frost: optional(part('JobFrostInput', FROST)),
  plant: optional(part('JobPlantInput', PLANT)),
  optimum: optional(
    list(part('JobOptimumInput', OPTIMUM), { of: 'stones', most: 20, unique: 'stone' }),
  ),
  storm: optional(part('JobStormInput', STORM)),
});
