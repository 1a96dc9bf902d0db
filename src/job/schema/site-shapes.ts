import { choice, list, number, optional, quantity } from '../../input/field.js';
import {
  BAG,
  DENSITY,
  DEPTH,
  DEPTH_OR_NONE,
  DISTANCE,
  FRACTION,
  PIECE,
  PLACE,
  ROOT_ZONE_FACTOR,
  SET_BACK,
  SHARE,
  SMALL,
  THICKNESS,
  TRUNK,
  ZONE,
} from '../../input/ranges.js';
import { shapeOf } from '../../input/shape.js';
import { SOIL_TYPES } from '../../sources/excavation-rules.js';
import { part } from './part.js';
import { NAME } from './name-field.js';
import { outlineField } from './outline-field.js';
import type {
  JobEdgeRestraintInput,
  JobExcavationInput,
  JobGeotextileInput,
  JobJointSandInput,
  JobOldPavingInput,
  JobPointInput,
  JobTreeInput,
  JobUtilityInput,
} from './site-input.js';

/** Shapes of the parts of a job about the site and its supplies. Internal. */

const POINT = shapeOf<JobPointInput>()({ x: quantity(PLACE), y: quantity(PLACE) });

export const UTILITY = shapeOf<JobUtilityInput>()({
  id: NAME,
  path: list(part('JobPointInput', POINT), { of: 'points', least: 2, most: 50 }),
  width: quantity(SET_BACK),
  tolerance: quantity(ZONE),
  found: optional(quantity(DEPTH)),
  minimumCover: optional(quantity(DEPTH_OR_NONE)),
});

export const TREE = shapeOf<JobTreeInput>()({
  id: NAME,
  x: quantity(PLACE),
  y: quantity(PLACE),
  trunkDiameter: quantity(TRUNK),
  radiusPerDiameter: number(ROOT_ZONE_FACTOR),
  minimumRadius: optional(quantity(ZONE)),
});

export const OLD_PAVING = shapeOf<JobOldPavingInput>()({
  material: choice(['asphalt', 'concrete']),
  thickness: quantity(THICKNESS),
  density: optional(quantity(DENSITY)),
  outline: optional(outlineField),
  pavement: optional(NAME),
  share: optional(number(SHARE)),
});

export const EXCAVATION = shapeOf<JobExcavationInput>()({
  soil: choice(SOIL_TYPES),
  spoilDistance: optional(quantity(SET_BACK)),
});

export const JOINT_SAND = shapeOf<JobJointSandInput>()({
  density: quantity(DENSITY),
  recess: optional(quantity(SMALL)),
  riseFromBed: optional(quantity(SMALL)),
  waste: optional(number(FRACTION)),
  bag: optional(quantity(BAG)),
});

export const EDGE_RESTRAINT = shapeOf<JobEdgeRestraintInput>()({
  piece: quantity(PIECE),
  spikeSpacing: quantity(PIECE),
  curvedSpikeSpacing: optional(quantity(PIECE)),
  lap: optional(quantity(SET_BACK)),
});

export const GEOTEXTILE = shapeOf<JobGeotextileInput>()({
  rollWidth: quantity(PIECE),
  rollLength: optional(quantity(DISTANCE)),
  overlap: quantity(SET_BACK),
  upturn: optional(quantity(SET_BACK)),
  endLap: optional(quantity(SET_BACK)),
});
