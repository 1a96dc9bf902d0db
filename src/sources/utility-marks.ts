import type { SourceId } from './catalogue.js';
import { printed, type ReferenceValue } from './reference-value.js';

const zone = (inches: string, source: SourceId) => printed(inches, 'in', source);

/**
 * Tolerance zones each side of a marked line, by state, measured from the outside of the line. For
 * information, not a default: follow the law where you dig.
 */
export const TOLERANCE_ZONES: Readonly<Record<string, ReferenceValue>> = Object.freeze({
  California: zone('24', 'tolerance-zones'),
  'District of Columbia': zone('18', 'zone-maryland'),
  Florida: zone('24', 'zone-florida'),
  Illinois: zone('18', 'tolerance-zones'),
  Indiana: zone('24', 'zone-indiana'),
  Maryland: zone('18', 'zone-maryland'),
  Massachusetts: zone('18', 'tolerance-zones'),
  Mississippi: zone('18', 'zone-mississippi'),
  'New York': zone('24', 'tolerance-zones'),
  Ohio: zone('18', 'zone-ohio'),
  'Rhode Island': zone('18', 'tolerance-zones'),
});

/**
 * Volume dug by hand in an hour. Source: `hand-dig-table`, which does not say how many people dig
 * or whether the volume is bank. Use for one person and bank volume is common practice.
 */
export const HAND_DIG_RATES = Object.freeze({
  'clay trench, to 1.5 m': printed('0.46', 'm3/h', 'hand-dig-table'),
  'clay pit, to 1.5 m': printed('0.35', 'm3/h', 'hand-dig-table'),
});
