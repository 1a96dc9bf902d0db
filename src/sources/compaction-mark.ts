import { printedNumber } from './reference-value.js';

/**
 * Percent of the maximum dry density above which the reference is likely the wrong one (another
 * soil, or the other test). Common practice, no source.
 */
export const COMPACTION_MARK = printedNumber('105', 'common-practice');
