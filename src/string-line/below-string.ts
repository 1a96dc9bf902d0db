import type { Length } from '../units/quantity.js';

/** From a string above finished grade down to a depth below finished grade. Internal. */
export const belowString = (stringHeight: Length, depth: Length): Length =>
  stringHeight.plus(depth);

/** From the ground down to the subgrade, both measured from the string; fill negative. Internal. */
export const digAt = (subgrade: Length, ground: Length): Length => subgrade.minus(ground);
