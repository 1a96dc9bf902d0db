import type { SourceId } from './catalogue.js';
import { printed, type ReferenceValue } from './reference-value.js';

/** Minimum and maximum compacted thickness of a bedding course. */
export interface BedLimits {
  /** Minimum thickness of the bed. */
  readonly minimum: ReferenceValue;
  /** Maximum thickness of the bed. */
  readonly maximum: ReferenceValue;
}

/**
 * Compacted bedding thickness in four publications. They differ, so choose the one that the job is
 * built to. Sources: `block-paving-guide` (20 to 30 mm), `irc-sp-63-2018` (30 mm, 5 mm either way),
 * `bedding-sand-clause` (50 mm, 5 mm either way), `brick-paving-1992` (clay pavers, 25 to 38 mm).
 */
export const BED_LIMITS = Object.freeze({
  'block-paving-guide': limits('20', '30', 'block-paving-guide'),
  'irc-sp-63-2018': limits('25', '35', 'irc-sp-63-2018'),
  'bedding-sand-clause': limits('45', '55', 'bedding-sand-clause'),
  'brick-paving-1992': limits('25', '38', 'brick-paving-1992'),
});

function limits(minimum: string, maximum: string, source: SourceId): BedLimits {
  return Object.freeze({
    minimum: printed(minimum, 'mm', source),
    maximum: printed(maximum, 'mm', source),
  });
}
