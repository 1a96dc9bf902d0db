import { printed } from './reference-value.js';

/**
 * How far the base extends past the edge restraint: by its own thickness (`edge-restraints`), and
 * at least this much (`paver-tolerances`, "greater of 6 in or base thickness").
 */
export const LEAST_BASE_EXTENSION = printed('6', 'in', 'paver-tolerances');
