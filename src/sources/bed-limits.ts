import type { SourceId } from './catalogue.js';
import { printed, type ReferenceValue } from './reference-value.js';

/** Least and most compacted thickness of a bedding course. */
export interface BedLimits {
  /** Minimum thickness of the bed. */
  readonly least: ReferenceValue;
  /** Maximum thickness of the bed. */
  readonly most: ReferenceValue;
}

/**
 * Compacted bedding thickness as four publications allow it. They differ: choose the one that the
 * job is built to. Sources: `block-paving-guide` (20 to 30 mm), `irc-sp-63-2018` (30 mm, 5 mm either way),
 * `bedding-sand-clause` (50 mm, 5 mm either way), `brick-paving-1992` (clay pavers, 25 to 38 mm).
 */
export const BED_LIMITS = Object.freeze({
  'block-paving-guide': limits('20', '30', 'block-paving-guide'),
  'irc-sp-63-2018': limits('25', '35', 'irc-sp-63-2018'),
  'bedding-sand-clause': limits('45', '55', 'bedding-sand-clause'),
  'brick-paving-1992': limits('25', '38', 'brick-paving-1992'),
});

function limits(least: string, most: string, source: SourceId): BedLimits {
  return Object.freeze({ least: printed(least, 'mm', source), most: printed(most, 'mm', source) });
}
