import type { JsonSchemaPart } from '../../input/about.js';
import { unitsOf } from '../../units/catalogue.js';

/** A number written as text in a job file: `"0.05"` or `"1/3"`. Internal. */
export const NUMBER_TEXT_SCHEMA: JsonSchemaPart = Object.freeze({
  type: 'string',
  pattern: '^\\s*[+-]?[0-9.]+(/[0-9.]+)?\\s*$',
});

/** A number in a job file: `0.05`, `"0.05"` or `"1/3"`. Internal. */
export const NUMBER_SCHEMA: JsonSchemaPart = Object.freeze({
  anyOf: [{ type: 'number' }, NUMBER_TEXT_SCHEMA],
});

/** A unit of length. Internal. */
export const LENGTH_UNIT_SCHEMA: JsonSchemaPart = Object.freeze({ enum: unitsOf('length') });
