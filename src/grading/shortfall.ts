import type { Length } from '../units/quantity.js';
import { NO_LENGTH } from '../units/zero.js';

/** What a margin lacks: never negative, 0 if it is enough. Internal. */
export const shortfallOf = (margin: Length): Length =>
  margin.isNegative() ? margin.negated() : NO_LENGTH;
