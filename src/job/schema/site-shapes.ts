import { choice, list, number, optional, quantity, whole } from '../../input/field.js';
import {
  BAG,
  BOX,
  DENSITY,
  DEPTH,
  DEPTH_OR_NONE,
  DISTANCE,
  FRACTION,
  PACKS,
  PAYLOAD,
  PIECE,
  PLACE,
  ROOT_ZONE_FACTOR,
  SET_BACK,
  SMALL,
  TRUNK,
  PIECES_IN_PACK,
  ZONE,
} from '../../input/ranges.js';
import { shapeOf } from '../../input/shape.js';
import { SOIL_TYPES } from '../../sources/excavation-rules.js';
import { part } from './part.js';
import { NAME } from './name-field.js';
import type {
  JobEdgeRestraintInput,
  JobExcavationInput,
  JobGeotextileInput,
  JobJointSandInput,
  JobPackInput,
  JobPacksInput,
  JobPaverPackInput,
  JobPointInput,
  JobSuppliesInput,
  JobTreeInput,
  JobUtilityInput,
} from './site-input.js';

/** How the parts of a job about the site and its supplies are read. Internal. */

const POINT = shapeOf<JobPointInput>()({ x: quantity(PLACE), y: quantity(PLACE) });

export const UTILITY = shapeOf<JobUtilityInput>()({
  id: NAME,
  path: list(part('JobPointInput', POINT), { of: 'points', least: 2, most: 50 }),
  width: quantity(SET_BACK),
  tolerance: quantity(ZONE),
  found: optional(quantity(DEPTH)),
  leastCover: optional(quantity(DEPTH_OR_NONE)),
});

export const TREE = shapeOf<JobTreeInput>()({
  id: NAME,
  x: quantity(PLACE),
  y: quantity(PLACE),
  trunkDiameter: quantity(TRUNK),
  radiusPerDiameter: number(ROOT_ZONE_FACTOR),
  leastRadius: optional(quantity(ZONE)),
});

export const EXCAVATION = shapeOf<JobExcavationInput>()({
  soil: choice(SOIL_TYPES),
  spoilDistance: optional(quantity(SET_BACK)),
});

const PACK = shapeOf<JobPackInput>()({
  name: NAME,
  volume: optional(quantity(BOX)),
  mass: optional(quantity(PAYLOAD)),
  minimum: optional(number(PACKS)),
});

const PAVER_PACK = shapeOf<JobPaverPackInput>()({ name: NAME, holds: whole(PIECES_IN_PACK) });

const JOINT_SAND = shapeOf<JobJointSandInput>()({
  density: quantity(DENSITY),
  recess: optional(quantity(SMALL)),
  riseFromBed: optional(quantity(SMALL)),
  waste: optional(number(FRACTION)),
  bag: optional(quantity(BAG)),
});

const EDGE_RESTRAINT = shapeOf<JobEdgeRestraintInput>()({
  piece: quantity(PIECE),
  spikeSpacing: quantity(PIECE),
  curvedSpikeSpacing: optional(quantity(PIECE)),
  lap: optional(quantity(SET_BACK)),
});

const GEOTEXTILE = shapeOf<JobGeotextileInput>()({
  rollWidth: quantity(PIECE),
  rollLength: optional(quantity(DISTANCE)),
  overlap: quantity(SET_BACK),
  upturn: optional(quantity(SET_BACK)),
  endLap: optional(quantity(SET_BACK)),
});

const PACKS_SHAPE = shapeOf<JobPacksInput>()({
  base: optional(part('JobPackInput', PACK)),
  bedding: optional(part('JobPackInput', PACK)),
  pavers: optional(list(part('JobPaverPackInput', PAVER_PACK), { of: 'packs', most: 5 })),
});

export const SUPPLIES = shapeOf<JobSuppliesInput>()({
  jointSand: optional(part('JobJointSandInput', JOINT_SAND)),
  edgeRestraint: optional(part('JobEdgeRestraintInput', EDGE_RESTRAINT)),
  geotextile: optional(part('JobGeotextileInput', GEOTEXTILE)),
  packs: optional(part('JobPacksInput', PACKS_SHAPE)),
});
