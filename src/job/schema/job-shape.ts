import { compactedPerLoose } from '../../input/compaction-ratio.js';
import { choice, flag, list, number, optional, quantity } from '../../input/field.js';
import {
  AREA,
  AZIMUTH,
  BOX,
  COMPACTED_PER_BANK,
  DENSITY,
  ELEVATION,
  FALL,
  FRACTION,
  JOINT,
  LEVEL_DIFFERENCE,
  LOOSE_PER_BANK,
  PAYLOAD,
  PLACE,
  SET_BACK,
  STRING_HEIGHT,
  THICKNESS,
  TOLERANCE,
  UNIT_SIDE,
} from '../../input/ranges.js';
import { shapeOf, type Field, type Values } from '../../input/shape.js';
import { COURSES } from '../../materials/border/course.js';
import { LAYING_PATTERNS } from '../../materials/pavers/pattern.js';
import { PAVEMENT_USES, SUBGRADES } from '../../sources/minimum-thickness.js';
import type { JobInput } from './job-input.js';
import { GRADE_SHAPE, LEVEL_BOOK, LEVELLING } from './level-shapes.js';
import type {
  JobBeddingInput,
  JobPaverInput,
  JobSoilInput,
  JobStoneInput,
  JobTruckInput,
} from './material-input.js';
import { part } from './part.js';
import { NAME } from './name-field.js';
import { outlineField } from './outline-field.js';
import type {
  JobBorderInput,
  JobLayerInput,
  JobOldSurfaceInput,
  JobPavementInput,
} from './pavement-input.js';
import { EXCAVATION, SUPPLIES, TREE, UTILITY } from './site-shapes.js';
import { spotHeights } from './spot-heights-field.js';
import type { JobStakeInput, JobStringLineInput } from './string-line-input.js';

const LAYER = shapeOf<JobLayerInput>()({
  kind: choice(['paver', 'bedding', 'base', 'sub-base']),
  name: optional(NAME),
  thickness: quantity(THICKNESS),
  material: optional(NAME),
});

const OLD_SURFACE = shapeOf<JobOldSurfaceInput>()({
  material: choice(['asphalt', 'concrete']),
  thickness: quantity(THICKNESS),
  area: optional(quantity(AREA)),
});

const BORDER = shapeOf<JobBorderInput>()({
  course: choice(COURSES),
  corner: optional(choice(['butt', 'mitre'])),
  edges: optional(list(flag, { of: 'edges' })),
});

const PAVEMENT = shapeOf<JobPavementInput>()({
  id: NAME,
  name: optional(NAME),
  use: choice(PAVEMENT_USES),
  subgrade: choice(SUBGRADES),
  frost: optional(flag),
  layers: list(part('JobLayerInput', LAYER), { of: 'layers', most: 20 }),
  outline: outlineField,
  edges: optional(list(choice(['open', 'restrained', 'building']), { of: 'edges' })),
  oldSurface: optional(part('JobOldSurfaceInput', OLD_SURFACE)),
  existingAboveFinish: optional(quantity(LEVEL_DIFFERENCE)),
  crossFall: optional(quantity(FALL)),
  grade: optional(part('JobGradeInput', GRADE_SHAPE)),
  border: optional(part('JobBorderInput', BORDER)),
  finishedLevels: optional(spotHeights),
});

const STAKE = shapeOf<JobStakeInput>()({
  id: NAME,
  x: quantity(PLACE),
  y: quantity(PLACE),
  finish: optional(quantity(ELEVATION)),
  ground: optional(quantity(LEVEL_DIFFERENCE)),
});

const STRING_LINE = shapeOf<JobStringLineInput>()({
  id: NAME,
  pavement: NAME,
  height: optional(quantity(STRING_HEIGHT)),
  reference: optional(choice(['ends', 'best-fit'])),
  stakes: list(part('JobStakeInput', STAKE), { of: 'stakes', least: 2, most: 500 }),
});

const BEDDING = shapeOf<JobBeddingInput>()({
  compactedDryDensity: quantity(DENSITY),
  compactedPerLoose,
  moisture: optional(number(FRACTION)),
  waste: optional(number(FRACTION)),
});

const STONE = shapeOf<JobStoneInput>()({ maxLift: quantity(THICKNESS), ...BEDDING });

const PAVER = shapeOf<JobPaverInput>()({
  length: quantity(UNIT_SIDE),
  width: quantity(UNIT_SIDE),
  joint: quantity(JOINT),
  breakage: optional(number(FRACTION)),
  pattern: optional(choice(LAYING_PATTERNS)),
  axis: optional(quantity(AZIMUTH)),
  reuse: optional(number(FRACTION)),
});

const SOIL = shapeOf<JobSoilInput>()({
  bankDensity: quantity(DENSITY),
  loosePerBank: number(LOOSE_PER_BANK),
  compactedPerBank: number(COMPACTED_PER_BANK),
});

const TRUCK = shapeOf<JobTruckInput>()({ boxVolume: quantity(BOX), payload: quantity(PAYLOAD) });

const VERSION: Field<1> = {
  read: (reader, value, path) => {
    if (value === 1) return value;
    if (value === undefined) reader.fail('REQUIRED', path, 'missing. Write 1');
    else reader.fail('UNKNOWN_CHOICE', path, 'this library reads version 1', { choices: '1' });
    return 1;
  },
  about: { kind: 'choice', choices: [1] },
};

/** How a job is read. Internal. */
export const JOB = shapeOf<JobInput>()({
  version: VERSION,
  name: NAME,
  stringHeight: quantity(STRING_HEIGHT),
  stakeTolerance: quantity(TOLERANCE),
  minimumFall: optional(quantity(FALL)),
  edgeRestraintWidth: optional(quantity(SET_BACK)),
  workingRoom: optional(quantity(SET_BACK)),
  existingLevels: optional(spotHeights),
  levelling: optional(part('JobLevellingInput', LEVELLING)),
  levelBook: optional(part('JobLevelBookInput', LEVEL_BOOK)),
  pavements: list(part('JobPavementInput', PAVEMENT), {
    of: 'pavements',
    most: 50,
    unique: 'id',
  }),
  stringLines: list(part('JobStringLineInput', STRING_LINE), {
    of: 'strings',
    most: 200,
    unique: 'id',
  }),
  base: part('JobStoneInput', STONE),
  bedding: part('JobBeddingInput', BEDDING),
  paver: optional(part('JobPaverInput', PAVER)),
  materials: optional(part('JobSuppliesInput', SUPPLIES)),
  utilities: optional(
    list(part('JobUtilityInput', UTILITY), {
      of: 'marked lines',
      least: 0,
      most: 20,
      unique: 'id',
    }),
  ),
  trees: optional(
    list(part('JobTreeInput', TREE), {
      of: 'trees',
      least: 0,
      most: 200,
      unique: 'id',
    }),
  ),
  excavation: optional(part('JobExcavationInput', EXCAVATION)),
  soil: part('JobSoilInput', SOIL),
  truck: part('JobTruckInput', TRUCK),
});

/** A job that has been read. Internal. */
export type ReadJob = Values<typeof JOB>;
