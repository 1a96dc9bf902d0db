import { cautionsFor, type Cautioned } from '../../sources/cautions.js';
import type { Area, Flow, Length, Time, Volume } from '../../units/quantity.js';
import type { Worked } from '../../working.js';
import type { MarkedLine } from './marked-line.js';

/** What is to hand dig, in a straight or a drawn dig. */
export interface HandDigTotals extends Cautioned, Worked {
  /** Area of all zones together, overlaps counted once. */
  readonly area: Area;
  /** Volume to hand dig, in place (bank). */
  readonly volume: Volume;
  /** Time at the rate given; null if no rate is given. */
  readonly time: Time | null;
  /** How to dig in a zone. */
  readonly notes: readonly string[];
}

/** What is dug across marked lines. Internal. */
export interface DigAcrossLines {
  readonly depth: Length;
  readonly lines: readonly MarkedLine[];
  readonly rate: Flow | undefined;
}

/** The fields of every hand-dig result, but its working. Internal. */
export const handDigTotals = (
  { area, volume }: Pick<HandDigTotals, 'area' | 'volume'>,
  rate: Flow | undefined,
): Omit<HandDigTotals, 'working'> => ({
  area,
  volume,
  time: rate === undefined ? null : volume.dividedBy(rate),
  notes: HAND_DIG_NOTES,
  cautions: cautionsFor('utilities', 'excavation'),
});

const HAND_DIG_NOTES: readonly string[] = Object.freeze([
  'Use hand tools or a vacuum inside a zone, whatever depth the marks or a test hole show.',
  'Marks give no depth. Private lines (irrigation, gates, lamps) are often not marked.',
  'If stripping the old surface removes the marks, stop and have the lines marked again before you dig on.',
  'Report any contact with a line to its owner, even a scratch. If you smell gas, stop, get everyone away, and call the emergency number and the gas company from well away.',
]);
