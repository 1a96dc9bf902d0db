import { choice, flag, list, number, optional, quantity, text, whole } from '../../input/field.js';
import {
  BATTER,
  BOX,
  COMPACTED_PER_BANK,
  COUNT,
  DENSITY,
  DISTANCE,
  ELEVATION,
  FALL,
  FORCE,
  LEVEL_DIFFERENCE,
  LINE_WEIGHT,
  LOOSE_PER_BANK,
  PAYLOAD,
  PLACE,
  SET_BACK,
  STRING_HEIGHT,
  THICKNESS,
  TOLERANCE,
  TOLERANCE_OF_SOME,
} from '../../input/ranges.js';
import { shapeOf, type Field, type Values } from '../../input/shape.js';
import { COURSES } from '../../materials/border/course.js';
import { PAVEMENT_USES, SUBGRADES } from '../../sources/minimum-thickness.js';
import { edgeField } from './edge-field.js';
import { GROUND } from './ground-shapes.js';
import type { JobInput } from './job-input.js';
import { GRADE_SHAPE, LEVEL_BOOK, LEVELLING } from './level-shapes.js';
import type { JobSoilInput, JobTruckInput } from './material-input.js';
import { MATERIALS } from './material-shapes.js';
import { NAME } from './name-field.js';
import { outlineField } from './outline-field.js';
import { part } from './part.js';
import type {
  JobBetweenStringsInput,
  JobBorderInput,
  JobLayerInput,
  JobPavementInput,
} from './pavement-input.js';
import { RATES } from './rates-shapes.js';
import { EXCAVATION, OLD_PAVING, TREE, UTILITY } from './site-shapes.js';
import { spotHeights } from './spot-heights-field.js';
import type { JobStakeInput, JobStringInput, JobStringLineInput } from './string-line-input.js';

const LAYER = shapeOf<JobLayerInput>()({
  kind: choice(['paver', 'bedding', 'base', 'sub-base']),
  name: optional(NAME),
  thickness: quantity(THICKNESS),
  material: optional(NAME),
});

const BORDER = shapeOf<JobBorderInput>()({
  course: choice(COURSES),
  corner: optional(choice(['butt', 'mitre'])),
  edges: optional(list(whole(COUNT), { of: 'edges' })),
  paver: optional(NAME),
});

const BETWEEN = shapeOf<JobBetweenStringsInput>()({
  from: NAME,
  to: NAME,
  spacing: quantity(DISTANCE),
});

const PAVEMENT = shapeOf<JobPavementInput>()({
  id: NAME,
  name: optional(NAME),
  use: choice(PAVEMENT_USES),
  subgrade: choice(SUBGRADES),
  frost: optional(flag),
  layers: list(part('JobLayerInput', LAYER), { of: 'layers', most: 20 }),
  outline: outlineField,
  edges: optional(list(edgeField, { of: 'edges' })),
  batter: optional(number(BATTER)),
  taperedBase: optional(flag),
  existingAboveFinish: optional(quantity(LEVEL_DIFFERENCE)),
  crossSlope: optional(quantity(FALL)),
  grade: optional(part('JobGradeInput', GRADE_SHAPE)),
  border: optional(part('JobBorderInput', BORDER)),
  finishedLevels: optional(spotHeights),
  betweenStrings: optional(part('JobBetweenStringsInput', BETWEEN)),
});

const STAKE = shapeOf<JobStakeInput>()({
  id: NAME,
  x: quantity(PLACE),
  y: quantity(PLACE),
  finish: optional(quantity(ELEVATION)),
  finishAt: optional(choice(['stake', 'edge'])),
  ground: optional(quantity(LEVEL_DIFFERENCE)),
  groundFrom: optional(NAME),
  groundOn: optional(choice(['soil', 'old-paving'])),
});

const STRING = shapeOf<JobStringInput>()({
  tension: quantity(FORCE),
  weightPerLength: quantity(LINE_WEIGHT),
});

const STRING_LINE = shapeOf<JobStringLineInput>()({
  id: NAME,
  pavement: NAME,
  height: optional(quantity(STRING_HEIGHT)),
  reference: optional(choice(['ends', 'best-fit'])),
  stakes: list(NAME, { of: 'stakes', least: 2, most: 10_000 }),
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
    else
      reader.fail('UNKNOWN_CHOICE', path, 'this library reads version 1 only. Write 1', {
        choices: '1',
      });
    return 1;
  },
  about: { kind: 'choice', choices: [1] },
};

/** Shape of a job. Internal. */
export const JOB = shapeOf<JobInput>()({
  $schema: optional(text(1000)),
  version: VERSION,
  name: NAME,
  stringHeight: quantity(STRING_HEIGHT),
  stakeTolerance: quantity(TOLERANCE),
  minimumFall: optional(quantity(FALL)),
  edgeRestraintWidth: optional(quantity(SET_BACK)),
  workingRoom: optional(quantity(SET_BACK)),
  setOutStep: optional(quantity(TOLERANCE_OF_SOME)),
  string: optional(part('JobStringInput', STRING)),
  existingLevels: optional(spotHeights),
  levelling: optional(part('JobLevellingInput', LEVELLING)),
  levelBook: optional(part('JobLevelBookInput', LEVEL_BOOK)),
  materials: part('JobMaterialsInput', MATERIALS),
  stakes: list(part('JobStakeInput', STAKE), {
    of: 'stakes',
    least: 2,
    most: 10_000,
    unique: 'id',
  }),
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
  oldPaving: optional(
    list(part('JobOldPavingInput', OLD_PAVING), {
      of: 'pieces of old paving',
      least: 0,
      most: 100,
    }),
  ),
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
  ground: optional(part('JobGroundInput', GROUND)),
  rates: optional(part('JobRatesInput', RATES)),
});

/** A job that has been read. Internal. */
export type ReadJob = Values<typeof JOB>;
