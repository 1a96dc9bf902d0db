import * as z from 'zod';
import type { QuantityRule } from '../../input/reader.js';
import { density, length, mass, slope, volume } from '../../units/construct.js';
import { nameField, quantityField } from './fields.js';

/** What the quantities of a job may be: beyond these they are slips. Internal. */

export const metres = (value: number) => length(value, 'm');

type LengthRule = QuantityRule<'length'>;

export const THICKNESS: LengthRule = { sign: 'positive', most: metres(5) };
export const WIDTH: LengthRule = { sign: 'not-negative', most: metres(10) };
export const LEVEL: LengthRule = { sign: 'any', most: metres(10) };
export const ELEVATION: LengthRule = { sign: 'any', most: metres(10_000) };
export const READING: LengthRule = { sign: 'not-negative', most: metres(20) };
export const PLACE: LengthRule = { sign: 'any', most: length(100_000, 'km') };
export const DISTANCE: LengthRule = { sign: 'not-negative', most: metres(100_000) };
export const RUN: LengthRule = { sign: 'positive', most: metres(100_000) };
export const PIECE: LengthRule = { sign: 'positive', most: metres(100) };
export const PACK_VOLUME: QuantityRule<'volume'> = { sign: 'positive', most: volume(100, 'm3') };
export const PACK_MASS: QuantityRule<'mass'> = { sign: 'positive', most: mass(100, 't') };
export const JOINT_DENSITY: QuantityRule<'density'> = {
  sign: 'positive',
  most: density(5, 't/m3'),
};
export const FALL: QuantityRule<'slope'> = { sign: 'not-negative', most: slope(1, 'ratio') };
export const GRADE: QuantityRule<'slope'> = { sign: 'any', most: slope(1, 'ratio') };

export const place = {
  x: quantityField('length', PLACE, 'plan coordinate'),
  y: quantityField('length', PLACE, 'plan coordinate'),
};

/** A level that is given, or taken from the level book of the job. */
export const knownLevel = {
  elevation: quantityField('length', ELEVATION, 'elevation').optional(),
  levelled: nameField('the point of the level book whose level it takes').optional(),
};

/** A point with a level that the finished surface has to meet. */
export const fixedLevelSchema = z.strictObject({
  name: nameField('what cannot move: slab, sill, street; default its number').optional(),
  ...place,
  ...knownLevel,
  fixed: z.boolean().optional(),
});
