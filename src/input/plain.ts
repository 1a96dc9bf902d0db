import { isQuantity } from '../units/quantity.js';

/** True for an object with fields: no list, no quantity. Internal. */
export const isPlain = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value) && !isQuantity(value);
