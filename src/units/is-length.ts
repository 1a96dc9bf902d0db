import { isQuantity, type Length } from './quantity.js';

/** True for a length. Internal. */
export const isLength = (value: unknown): value is Length =>
  isQuantity(value) && value.dimension === 'length';
