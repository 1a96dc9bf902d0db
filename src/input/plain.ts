import { isQuantity } from '../units/quantity.js';

/** True for an object with fields that is not a list or a quantity. Internal. */
export const isPlain = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value) && !isQuantity(value);

/** True for an object with fields that is not `{ value, unit }`. Internal. */
export const isForm = (value: unknown): value is Record<string, unknown> =>
  isPlain(value) && !Object.hasOwn(value, 'value') && !Object.hasOwn(value, 'unit');
