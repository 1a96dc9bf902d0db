import * as z from 'zod';
import { SOIL_TYPES } from '../../sources/excavation-rules.js';
import { COURSES } from '../../materials/course.js';
import { FRACTION } from '../../volumes/limits.js';
import { nameField, numberField, quantityField } from './fields.js';
import {
  DISTANCE,
  JOINT_DENSITY,
  PACK_MASS,
  PACK_VOLUME,
  PIECE,
  place,
  THICKNESS,
  WIDTH,
} from './schema-rules.js';

/** Every number here that a law or an owner sets has no default. */

/** A marked line: a pipe, a cable, a duct. */
export const utilitySchema = z.strictObject({
  id: nameField('id of the line, once in the job'),
  path: z.array(z.strictObject(place)).min(2).max(50),
  width: quantityField('length', WIDTH, 'outside diameter or width'),
  tolerance: quantityField(
    'length',
    WIDTH,
    'zone to dig by hand on each side, as the law where you dig sets it',
  ),
  found: quantityField(
    'length',
    THICKNESS,
    'depth of its top, measured in a test hole; never a usual or a marked depth',
  ).optional(),
  leastCover: quantityField('length', WIDTH, 'least cover that its owner asks for').optional(),
});

/** A tree near the dig. */
export const treeSchema = z.strictObject({
  id: nameField('id of the tree, once in the job'),
  ...place,
  trunkDiameter: quantityField('length', THICKNESS, 'at 4.5 ft (1.4 m) above ground'),
  radiusPerDiameter: numberField(
    { sign: 'positive', least: 1, most: 40 },
    'radius of the root zone over trunk diameter, as the authority sets it',
  ),
  leastRadius: quantityField('length', THICKNESS, 'the zone is never smaller').optional(),
});

/** What a competent person says of the ground. */
export const excavationSchema = z.strictObject({
  soil: z.enum(SOIL_TYPES),
  spoilDistance: quantityField('length', WIDTH, 'from the edge to spoil and gear').optional(),
});

const pack = (words: string) =>
  z.strictObject({
    name: nameField('what a pack is called: yard, bag, truck'),
    volume: quantityField('volume', PACK_VOLUME, words).optional(),
    mass: quantityField('mass', PACK_MASS, words).optional(),
    minimum: numberField({ sign: 'not-negative', most: 1000 }, 'smallest order').optional(),
  });

/** What is ordered besides stone, sand and units, and the packs in which things are sold. */
export const materialsSchema = z.strictObject({
  jointSand: z
    .strictObject({
      density: quantityField('density', JOINT_DENSITY, 'dry, in the joint'),
      recess: quantityField('length', WIDTH, 'top of the unit down to the fill').optional(),
      riseFromBed: quantityField('length', WIDTH, 'filled from below by the bed').optional(),
      waste: numberField(FRACTION, 'on top, as a fraction').optional(),
      bag: quantityField('mass', PACK_MASS, 'what a bag holds').optional(),
    })
    .optional(),
  edgeRestraint: z
    .strictObject({
      piece: quantityField('length', PIECE, 'length of a piece'),
      spikeSpacing: quantityField('length', PIECE, 'greatest, on straight runs'),
      curvedSpikeSpacing: quantityField('length', PIECE, 'greatest, on curves').optional(),
      lap: quantityField('length', WIDTH, 'by which pieces overlap').optional(),
    })
    .optional(),
  geotextile: z
    .strictObject({
      rollWidth: quantityField('length', PIECE, 'width of a roll'),
      rollLength: quantityField('length', DISTANCE, 'length of a roll').optional(),
      overlap: quantityField('length', WIDTH, 'of strips side by side'),
      upturn: quantityField('length', WIDTH, 'up the sides of the dig').optional(),
      endLap: quantityField('length', WIDTH, 'of pieces end to end').optional(),
    })
    .optional(),
  packs: z
    .strictObject({
      base: pack('loose, or as weighed').optional(),
      bedding: pack('loose, or as weighed').optional(),
      pavers: z
        .array(
          z.strictObject({
            name: nameField('band, pallet ...'),
            holds: numberField(
              { sign: 'positive', most: 100_000 },
              'units; a larger pack: how many of the pack before',
            ),
          }),
        )
        .min(1)
        .max(5)
        .optional(),
    })
    .optional(),
});

/** A course of whole units along the edge. */
export const borderSchema = z.strictObject({
  course: z.enum(COURSES),
  corner: z.enum(['butt', 'mitre']).optional(),
  edges: z.array(z.boolean()).optional(),
});
