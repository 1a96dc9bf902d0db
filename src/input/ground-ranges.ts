import { upTo } from './ranges.js';
import type { NumberRule } from './reader.js';

// The section of the table of ranges (ranges.ts) for soil, frost and water.

type NumberRange = NumberRule & { readonly example: string };

const rule = (range: NumberRange): Readonly<NumberRange> => Object.freeze(range);

/** Density of soil solids over that of water. */
export const SPECIFIC_GRAVITY = /* #__PURE__ */ rule({
  sign: 'positive',
  least: 1,
  most: 5,
  example: '2.65',
});
/** Voids over solids, by volume. */
export const VOID_RATIO = /* #__PURE__ */ rule({ sign: 'not-negative', most: 20, example: '0.5' });
/** Voids over the whole, by volume: less than 1. */
export const POROSITY = /* #__PURE__ */ rule({
  sign: 'not-negative',
  most: 0.95,
  example: '0.33 for 33%',
});
/** Voids of stone that holds water, by volume. */
export const STONE_VOIDS = /* #__PURE__ */ rule({
  sign: 'positive',
  most: 0.7,
  example: '0.4 for 40%',
});
/** Water over dry mass; peat holds several times its own. */
export const SOIL_MOISTURE = /* #__PURE__ */ rule({
  sign: 'not-negative',
  most: 10,
  example: '0.12 for 12%',
});
/** Density of water, salt or not. */
export const WATER_DENSITY = /* #__PURE__ */ upTo(
  'density',
  'positive',
  [1300, 'kg/m3'],
  '"62.4 lb/ft3" or "1000 kg/m3"',
);
/** Relative density of sand or gravel in percent; very dense soil may be over 100. */
export const RELATIVE_DENSITY = /* #__PURE__ */ rule({
  sign: 'not-negative',
  most: 130,
  example: '70 for 70%',
});
/** Index of a surface over that of the air. */
export const SURFACE_FACTOR = /* #__PURE__ */ rule({
  sign: 'not-negative',
  most: 5,
  example: '0.75',
});
/** Days of a freezing season. */
export const SEASON_DAYS = /* #__PURE__ */ rule({ sign: 'positive', most: 366, example: '90' });
/** Percent by mass finer than a size. */
export const PERCENT_FINER = /* #__PURE__ */ rule({
  sign: 'not-negative',
  most: 100,
  example: '4 for 4%',
});
/** Plasticity index of clay. */
export const PLASTICITY = /* #__PURE__ */ rule({
  sign: 'not-negative',
  most: 1000,
  example: '14',
});
/** Bearing ratio of soil in percent. */
export const BEARING = /* #__PURE__ */ rule({ sign: 'positive', most: 200, example: '4 for 4%' });
/** Area that drains onto paving over the area of the paving. */
export const AREA_RATIO = /* #__PURE__ */ rule({ sign: 'not-negative', most: 100, example: '1' });
