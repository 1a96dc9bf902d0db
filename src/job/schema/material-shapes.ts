import { compactedPerLoose } from '../../input/compaction-ratio.js';
import { choice, list, number, optional, quantity, whole } from '../../input/field.js';
import {
  AZIMUTH,
  BOX,
  DENSITY,
  FRACTION,
  JOINT,
  PACKS,
  PAYLOAD,
  PIECES_IN_PACK,
  SMALL,
  THICKNESS,
  UNIT_SIDE,
} from '../../input/ranges.js';
import { shapeOf } from '../../input/shape.js';
import { LAYING_PATTERNS } from '../../materials/pavers/pattern.js';
import type {
  JobLooseInput,
  JobMaterialsInput,
  JobPackInput,
  JobPaverInput,
  JobPaverPackInput,
  JobSandInput,
  JobStoneInput,
} from './material-input.js';
import { NAME } from './name-field.js';
import { part } from './part.js';
import { EDGE_RESTRAINT, GEOTEXTILE, JOINT_SAND } from './site-shapes.js';

const PACK = shapeOf<JobPackInput>()({
  name: NAME,
  volume: optional(quantity(BOX)),
  mass: optional(quantity(PAYLOAD)),
  minimum: optional(number(PACKS)),
});

const PAVER_PACK = shapeOf<JobPaverPackInput>()({ name: NAME, holds: whole(PIECES_IN_PACK) });

const LOOSE = shapeOf<JobLooseInput>()({
  id: NAME,
  name: optional(NAME),
  compactedDryDensity: quantity(DENSITY),
  compactedPerLoose,
  moisture: optional(number(FRACTION)),
  waste: optional(number(FRACTION)),
  pack: optional(part('JobPackInput', PACK)),
});

const STONE = shapeOf<JobStoneInput>()({ ...LOOSE, maxLift: quantity(THICKNESS) });

const SAND = shapeOf<JobSandInput>()({ ...LOOSE, settlement: optional(quantity(SMALL)) });

const PAVER = shapeOf<JobPaverInput>()({
  id: NAME,
  name: optional(NAME),
  length: quantity(UNIT_SIDE),
  width: quantity(UNIT_SIDE),
  joint: quantity(JOINT),
  breakage: optional(number(FRACTION)),
  pattern: optional(choice(LAYING_PATTERNS)),
  axis: optional(quantity(AZIMUTH)),
  reuse: optional(number(FRACTION)),
  packs: optional(list(part('JobPaverPackInput', PAVER_PACK), { of: 'packs', most: 5 })),
});

/** Shape of the materials of a job. Internal. */
export const MATERIALS = shapeOf<JobMaterialsInput>()({
  stones: list(part('JobStoneInput', STONE), { of: 'stones', most: 20, unique: 'id' }),
  sands: list(part('JobSandInput', SAND), { of: 'sands', most: 20, unique: 'id' }),
  pavers: optional(list(part('JobPaverInput', PAVER), { of: 'pavers', most: 50, unique: 'id' })),
  fill: optional(NAME),
  jointSand: optional(part('JobJointSandInput', JOINT_SAND)),
  edgeRestraint: optional(part('JobEdgeRestraintInput', EDGE_RESTRAINT)),
  geotextile: optional(part('JobGeotextileInput', GEOTEXTILE)),
});
