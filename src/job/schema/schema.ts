import * as z from 'zod';
import { readCompactedPerLoose } from '../../input/compaction-ratio.js';
import { LAYING_PATTERNS } from '../../materials/pattern.js';
import { PAVEMENT_USES, SUBGRADES } from '../../sources/minimum-thickness.js';
import { BOX, DENSITY, FRACTION, PAYLOAD } from '../../volumes/limits.js';
import {
  checkedNumberField,
  nameField,
  numberField,
  outlineField,
  quantityField,
  spotHeightsField,
} from './fields.js';
import { gradeSchema, levelBookSchema, levellingSchema } from './schema-levels.js';
import {
  borderSchema,
  excavationSchema,
  materialsSchema,
  treeSchema,
  utilitySchema,
} from './schema-site.js';
import { ELEVATION, FALL, LEVEL, metres, place, THICKNESS, WIDTH } from './schema-rules.js';

const layerSchema = z.strictObject({
  kind: z.enum(['paver', 'bedding', 'base', 'sub-base']),
  name: nameField('what the crew calls it; default the kind').optional(),
  thickness: quantityField('length', THICKNESS, 'compacted thickness'),
  material: nameField('what it is made of').optional(),
});

const oldSurfaceSchema = z.strictObject({
  material: z.enum(['asphalt', 'concrete']),
  thickness: quantityField('length', THICKNESS, 'thickness of the old paving, measured at a cut'),
  area: quantityField(
    'area',
    { sign: 'positive' },
    'area of old paving to strip; default the area of the new paving',
  ).optional(),
});

const pavementSchema = z.strictObject({
  id: nameField('short id, once in the job'),
  name: nameField('name on the sheet; default the id').optional(),
  use: z.enum(PAVEMENT_USES),
  subgrade: z.enum(SUBGRADES),
  frost: z.boolean().optional(),
  layers: z.array(layerSchema).min(1).max(20),
  outline: outlineField('edge of the finished paving'),
  edges: z.array(z.enum(['open', 'restrained', 'building'])).optional(),
  oldSurface: oldSurfaceSchema.optional(),
  existingAboveFinish: quantityField(
    'length',
    LEVEL,
    'existing surface above finished grade, negative where below; default level with it',
  ).optional(),
  crossFall: quantityField('slope', FALL, 'fall square to the string lines').optional(),
  grade: gradeSchema.optional(),
  border: borderSchema.optional(),
  finishedLevels: spotHeightsField('spot heights of the finished surface').optional(),
});

const stakeSchema = z.strictObject({
  id: nameField('id on the stake, once in the job'),
  ...place,
  finish: quantityField('length', ELEVATION, 'elevation of finished grade at the stake').optional(),
  ground: quantityField(
    'length',
    LEVEL,
    'measured from the string down to the existing surface',
  ).optional(),
});

const stringLineSchema = z.strictObject({
  id: nameField('short id, once in the job'),
  pavement: nameField('id of the pavement the string serves'),
  height: quantityField(
    'length',
    WIDTH,
    'string above finished grade; default that of the job',
  ).optional(),
  reference: z.enum(['ends', 'best-fit']).optional(),
  stakes: z.array(stakeSchema).min(1).max(500),
});

const stone = {
  compactedDryDensity: quantityField('density', DENSITY, 'dry, compacted in place'),
  compactedPerLoose: checkedNumberField(
    readCompactedPerLoose,
    'compacted over loose, 0.5 to 1: from a trial strip',
  ),
  moisture: numberField(FRACTION, 'water over dry mass, as a fraction').optional(),
  waste: numberField(FRACTION, 'on top, as a fraction').optional(),
};

/**
 * The description of a job, as JSON: strict (an unknown field is a fault), every length, area, mass
 * and slope with its unit.
 */
export const jobSchema = z.strictObject({
  version: z.literal(1),
  name: nameField('name of the site'),
  stringHeight: quantityField('length', WIDTH, 'string above finished grade'),
  stakeTolerance: quantityField('length', WIDTH, 'how far a stake may stand out of line'),
  minimumFall: quantityField(
    'slope',
    FALL,
    'least fall for drainage; default 2 %, the published minimum',
  ).optional(),
  edgeRestraintWidth: quantityField(
    'length',
    WIDTH,
    'width of the edge restraint outside the paving; default none',
  ).optional(),
  workingRoom: quantityField(
    'length',
    WIDTH,
    'dig beyond the base on open edges; default none',
  ).optional(),
  existingLevels: spotHeightsField('spot heights of the surface now there').optional(),
  levelling: levellingSchema.optional(),
  levelBook: levelBookSchema.optional(),
  pavements: z.array(pavementSchema).min(1).max(50),
  stringLines: z.array(stringLineSchema).min(1).max(200),
  base: z.strictObject({
    maxLift: quantityField('length', THICKNESS, 'thickest compacted lift the machine can compact'),
    ...stone,
  }),
  bedding: z.strictObject(stone),
  paver: z
    .strictObject({
      length: quantityField('length', THICKNESS, 'length of a unit, without its joint'),
      width: quantityField('length', THICKNESS, 'width of a unit, without its joint'),
      joint: quantityField('length', { sign: 'not-negative', most: metres(0.1) }, 'joint width'),
      breakage: numberField(
        FRACTION,
        'on top, as a fraction: cuts and breakage; with a pattern breakage alone',
      ).optional(),
      pattern: z.enum(LAYING_PATTERNS).optional(),
      axis: quantityField(
        'angle',
        { sign: 'any' },
        'of the long side of the units, counter-clockwise from the x axis; default along it',
      ).optional(),
      reuse: numberField(FRACTION, 'share of the off-cuts that find a place').optional(),
    })
    .optional(),
  materials: materialsSchema.optional(),
  utilities: z.array(utilitySchema).max(20).optional(),
  trees: z.array(treeSchema).max(200).optional(),
  excavation: excavationSchema.optional(),
  soil: z.strictObject({
    bankDensity: quantityField('density', DENSITY, 'as it lies, water included'),
    loosePerBank: numberField({ sign: 'positive', least: 0.9, most: 3 }, 'loose over bank volume'),
    compactedPerBank: numberField(
      { sign: 'positive', least: 0.4, most: 2 },
      'compacted over bank volume',
    ),
  }),
  truck: z.strictObject({
    boxVolume: quantityField('volume', BOX, 'what the box holds, level'),
    payload: quantityField('mass', PAYLOAD, 'legal payload'),
  }),
});

/** A job as it is written: lengths as text or value and unit. */
export type JobInput = z.input<typeof jobSchema>;

/** A job that has been read. */
export type Job = z.output<typeof jobSchema>;

/** What lies along an edge of the paving. */
export type EdgeKind = 'open' | 'restrained' | 'building';

/**
 * The job description as a JSON Schema (draft 2020-12), for editors and other languages.
 *
 * @example
 * jobJsonSchema()['type'] //=> 'object'
 */
export function jobJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(jobSchema, { io: 'input' });
}
