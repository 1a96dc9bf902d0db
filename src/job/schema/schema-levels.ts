import * as z from 'zod';
import { nameField, quantityField } from './fields.js';
import {
  DISTANCE,
  ELEVATION,
  fixedLevelSchema,
  GRADE,
  knownLevel,
  READING,
  RUN,
  THICKNESS,
  WIDTH,
} from './schema-rules.js';

/** Finished grade by levels that cannot move, instead of stake by stake. */
export const gradeSchema = z.strictObject({
  kind: z.enum(['line', 'plane', 'warped']),
  levels: z.array(fixedLevelSchema).min(1).max(200),
  crossSlope: quantityField(
    'slope',
    GRADE,
    'of a line: slope square to it, + rising to the left; default level',
  ).optional(),
});

/** The instrument as it stands: one set-up for the day. */
export const levellingSchema = z.strictObject({
  benchmark: z.strictObject({ name: nameField('name of the mark').optional(), ...knownLevel }),
  backsight: quantityField('length', READING, 'reading on the benchmark'),
  rodLength: quantityField('length', THICKNESS, 'longest reading of the rod').optional(),
  closing: z
    .strictObject({
      reading: quantityField('length', READING, 'on the benchmark again, at the end of the day'),
      tolerance: quantityField('length', WIDTH, 'by how much it may differ from the backsight'),
    })
    .optional(),
});

const reading = (words: string) => quantityField('length', READING, words).optional();

/** A level book as it was kept. */
export const levelBookSchema = z.strictObject({
  start: quantityField('length', ELEVATION, 'elevation of the starting mark'),
  rows: z
    .array(
      z.strictObject({
        point: nameField('what the rod stood on'),
        back: reading('backsight: the first reading of a set-up'),
        intermediate: reading('a sight between'),
        fore: reading('foresight: the last reading of a set-up'),
        distance: quantityField('length', DISTANCE, 'from the start, along the levels').optional(),
      }),
    )
    .min(1)
    .max(2000),
  known: quantityField('length', ELEVATION, 'elevation of the closing mark').optional(),
  allowable: quantityField('length', WIDTH, 'greatest misclosure').optional(),
  rule: z
    .strictObject({
      k: quantityField('length', WIDTH, 'constant of the rule k sqrt(n)'),
      per: quantityField('length', RUN, 'distance that counts one; default a set-up').optional(),
    })
    .optional(),
  adjustBy: z.enum(['set-ups', 'distance']).optional(),
});
