import { fault } from '../errors.js';
import { entry } from '../invariant.js';
import { exactOf, fromSI, type Length } from '../units/quantity.js';
import { ZERO_RATIO } from '../units/ratio.js';
import { derivedStep, given, type Step, type Worked } from '../working.js';
import { edgeGaps, edgeReach, edgeRests, greatestGap, type EdgeGap } from './edge-gaps.js';
import type { LineReading } from './line-readings.js';

/** A reading that a straightedge rests on. */
export interface EdgeContact {
  /** Distance along the line. */
  readonly station: Length;
  /** Height above the level line of the readings. */
  readonly height: Length;
}

/** The largest gap under a straightedge slid along a profile. */
export interface Straightedge extends Worked {
  /** Plumb distance from the edge down to the reading; 0 if there is no gap anywhere. */
  readonly greatestGap: Length;
  /** Station of that reading; of the first contact if there is no gap. */
  readonly at: Length;
  /** The two readings that the edge rests on there; the outermost two if it touches more. */
  readonly contacts: readonly [EdgeContact, EdgeContact];
  /**
   * True if some positions of the edge have fewer than three readings under it, where a gap does
   * not show.
   */
  readonly isSparse: boolean;
  /** True if the profile is shorter than the straightedge. */
  readonly overhangs: boolean;
  /**
   * The shortest length that the readings under the edge span, at most the length of the edge. The
   * closer the two are, the more of the true gap shows.
   */
  readonly reach: Length;
}

/** An edge slid along readings, and the largest gap over each. Internal. */
export interface SlidEdge {
  readonly edge: Omit<Straightedge, 'working'>;
  readonly gaps: readonly (EdgeGap | null)[];
  /** Height of the reading at the largest gap. */
  readonly height: Length;
}

/**
 * Slides an edge along readings; at least one position must have `least` of them under it.
 * Internal.
 */
export function slideEdge(
  readings: readonly LineReading[],
  { edgeLength, least }: { readonly edgeLength: Length; readonly least: 2 | 3 },
): SlidEdge {
  const profile = readings.map(({ at }) => at);
  const { reach, fewest, most } = edgeReach(profile, exactOf(edgeLength));
  if (most < least) throw tooSparse(least);
  const rests = edgeRests(profile, exactOf(edgeLength));
  const gaps = edgeGaps(profile, rests);
  const found = greatestGap(gaps);
  const lies = rests.findIndex((rest) => rest !== null);
  const [left, right] = found?.contacts ?? [lies, entry(rests, lies) ?? lies];
  const contacts = [contactAt(readings, left), contactAt(readings, right)] as const;
  const [first, last] = [contactAt(readings, 0), contactAt(readings, readings.length - 1)];
  const place = contactAt(readings, found?.index ?? left);
  const edge = {
    greatestGap: fromSI('length', found?.gap ?? ZERO_RATIO),
    at: place.station,
    contacts,
    isSparse: fewest < 3,
    overhangs: last.station.minus(first.station).compare(edgeLength) < 0,
    reach: fromSI('length', reach),
  };
  return { edge, gaps, height: place.height };
}

const tooSparse = (least: 2 | 3) =>
  fault(
    'READINGS_TOO_SPARSE',
    `no position of the straightedge has ${least === 2 ? 'two' : 'three'} readings under it. Take readings closer together`,
    { least },
    ['profile'],
  );

function contactAt(readings: readonly LineReading[], index: number): EdgeContact {
  const { station, value } = entry(readings, index);
  return { station, height: value };
}

/** The working of the largest gap. Internal. */
export function gapStep({ edge, height }: SlidEdge, edgeLength: Length): Step {
  const [left, right] = edge.contacts;
  return derivedStep({
    title: 'Largest gap below the straightedge',
    formula: 'g = z1 + (z2 - z1) * (s - s1) / (s2 - s1) - z',
    given: [
      given('s1', 'station of the first contact', left.station),
      given('z1', 'height of the first contact', left.height),
      given('s2', 'station of the second contact', right.station),
      given('z2', 'height of the second contact', right.height),
      given('s', 'station of the gap', edge.at),
      given('z', 'height of the reading there', height),
    ],
    result: given('g', `largest gap, straightedge of ${edgeLength.toString()}`, edge.greatestGap),
  });
}
