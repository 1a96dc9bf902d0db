import { printed, type ReferenceValue } from './reference-value.js';

/**
 * Tolerance zones each side of a marked line, by state, measured from the outside of the line. They
 * inform; they are no default: the law where you dig decides. Source: `tolerance-zones`.
 */
export const TOLERANCE_ZONES: Readonly<Record<string, ReferenceValue>> = Object.freeze({
  California: printed('24', 'in', 'tolerance-zones'),
  Florida: printed('24', 'in', 'tolerance-zones'),
  Illinois: printed('18', 'in', 'tolerance-zones'),
  Massachusetts: printed('18', 'in', 'tolerance-zones'),
  Mississippi: printed('18', 'in', 'tolerance-zones'),
  'New York': printed('24', 'in', 'tolerance-zones'),
  'Rhode Island': printed('18', 'in', 'tolerance-zones'),
});

/** What the colours of locate marks stand for. Source: `tolerance-zones`. */
export const LOCATE_COLOURS = Object.freeze({
  red: 'electric',
  yellow: 'gas, oil, steam',
  orange: 'communication',
  blue: 'potable water',
  purple: 'reclaimed water, irrigation, slurry',
  green: 'sewer, drain',
  pink: 'temporary survey (also unknown)',
  white: 'proposed excavation',
});

/** Volume in the bank that one person digs by hand in an hour. Source: `hand-dig-table`. */
export const HAND_DIG_RATES = Object.freeze({
  'clay trench, to 1.5 m': printed('0.46', 'm3/h', 'hand-dig-table'),
  'clay pit, to 1.5 m': printed('0.35', 'm3/h', 'hand-dig-table'),
});
