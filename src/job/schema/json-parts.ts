import type { JsonSchemaPart } from '../../input/about.js';

/** A number in a job file: `0.05`, `"0.05"` or `"1/3"`. Internal. */
export const NUMBER_SCHEMA: JsonSchemaPart = Object.freeze({
  anyOf: [{ type: 'number' }, { type: 'string', pattern: '^[+-]?[0-9.]+(/[0-9.]+)?$' }],
});
