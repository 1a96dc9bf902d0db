import { fault } from '../errors.js';
import { makeReader } from '../input/reader.js';
import { length, type LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Length } from '../units/quantity.js';
import { ZERO_RATIO } from '../units/ratio.js';
import { given, withWorking, type Step, type Worked } from '../working.js';
import { edgeGaps, edgeReach, edgeRests, greatestGap, type EdgeGap } from './edge-gaps.js';
import { SPAN } from './limits.js';
import { readLine, type LineReading, type ProfileReadingInput } from './read-profile.js';

/** A reading that a straightedge rests on. */
export interface EdgeContact {
  readonly station: Length;
  readonly height: Length;
}

/** The greatest gap under a straightedge that is slid along a profile. */
export interface Straightedge extends Worked {
  /** Plumb, from the edge down to the reading; zero where it lies without a gap everywhere. */
  readonly greatestGap: Length;
  /** Station of that reading; of the first contact where there is no gap. */
  readonly at: Length;
  /** The two readings that the edge rests on then, the farthest apart where it touches more. */
  readonly contacts: readonly [EdgeContact, EdgeContact];
  /** The readings are fewer than three under the edge somewhere: a gap there does not show. */
  readonly sparse: boolean;
  /** The profile is shorter than the straightedge. */
  readonly overhangs: boolean;
  /**
   * The shortest stretch that the readings under the edge span: at most its length. The nearer, the
   * more of the true gap shows.
   */
  readonly reach: Length;
}

/**
 * Slides a straightedge along a sampled profile and finds the greatest gap below it. Wherever it is
 * set down it rests on two readings, neighbours on the upper hull of those under it, so that none
 * stands above it. Over all such pairs i, j not farther apart than the edge is long, and each reading
 * k between: `gap = z_i + (z_j - z_i)(s_k - s_i)/(s_j - s_i) - z_k`. Exact; gaps are plumb, so a
 * profile that is tilted as a whole gives the same. It knows the readings alone: take them close
 * together, at most a tenth of the edge apart, high and low spots among them.
 *
 * @param options.profile - at least 2 readings: `station` along the line, growing, and `height`
 *   [length]
 * @param options.length - of the straightedge [length]
 * @returns greatest gap, where, the two contacts [length], and how well the readings show it
 * @throws `TOO_FEW_POINTS`, `STATION_ORDER`, `READINGS_TOO_SPARSE` where it nowhere reaches from one
 *   reading to the next, `DUPLICATE_ID`, `NOT_POSITIVE`, `OUT_OF_RANGE`, `EMPTY_LIST` and the reading
 *   codes
 * @source derived
 * @source ufgs-02749
 * @example
 * const heights = ['2 mm', '0 mm', '-1 mm', '-3 mm', '-1 mm', '0 mm', '2 mm'];
 * const profile = heights.map((height, k) => ({ station: { value: k / 2, unit: 'm' as const }, height }));
 * const edge = straightedge({ profile, length: '3 m' });
 * edge.greatestGap.to('mm').toString() //=> '5'
 * edge.at.to('m').toString() //=> '1.5'
 * edge.contacts.map(({ station }) => station.to('m').toString()) //=> ['0', '3']
 */
export function straightedge(options: {
  readonly profile: readonly ProfileReadingInput[];
  readonly length: LengthInput;
}): Straightedge {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const readings = readLine(reader, fields['profile'], { field: 'profile', name: 'height' });
  const edgeLength = reader.quantity('length', fields['length'], ['length'], SPAN);
  reader.finish();
  const { edge } = slideEdge(readings, { edgeLength, least: 2 });
  return withWorking(edge, () => [gapStep(edge, edgeLength)]);
}

/** An edge that was slid along readings, and the greatest gap over each. Internal. */
export interface SlidEdge {
  readonly edge: Omit<Straightedge, 'working'>;
  readonly gaps: readonly (EdgeGap | null)[];
}

/**
 * Slides an edge along readings that have been read; somewhere it must have `least` of them under it.
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
  const [left, right] = found?.contacts ?? [lies, rests[lies] ?? lies];
  const contacts = [contactAt(readings, left), contactAt(readings, right)] as const;
  const [first, last] = [contactAt(readings, 0), contactAt(readings, readings.length - 1)];
  const edge = {
    greatestGap: fromSI('length', found?.gap ?? ZERO_RATIO),
    at: contactAt(readings, found?.index ?? left).station,
    contacts,
    sparse: fewest < 3,
    overhangs: last.station.minus(first.station).compare(edgeLength) < 0,
    reach: fromSI('length', reach),
  };
  return { edge, gaps };
}

const tooSparse = (least: 2 | 3) =>
  fault(
    'READINGS_TOO_SPARSE',
    `nowhere do ${least === 2 ? 'two' : 'three'} readings stand under the straightedge: take them closer together`,
    { least },
    ['profile'],
  );

function contactAt(readings: readonly LineReading[], index: number): EdgeContact {
  const { station, value } = readings[index] ?? NO_READING;
  return { station, height: value };
}

const NOTHING = length(0, 'm');

/** Stands for a reading that is not there, which no caller can bring about. */
const NO_READING = { station: NOTHING, value: NOTHING };

/** How the greatest gap was come by. Internal. */
export function gapStep(edge: Omit<Straightedge, 'working'>, edgeLength: Length): Step {
  const [left, right] = edge.contacts;
  return {
    title: 'Greatest gap below the straightedge',
    formula: 'g = z1 + (z2 - z1)(s - s1)/(s2 - s1) - z',
    given: [
      given('L', 'length of the straightedge', edgeLength),
      given('s1', 'station of the first contact', left.station),
      given('z1', 'height of the first contact', left.height),
      given('s2', 'station of the second contact', right.station),
      given('z2', 'height of the second contact', right.height),
      given('s', 'station of the gap', edge.at),
    ],
    result: given('g', 'greatest gap', edge.greatestGap),
    source: 'derived',
  };
}
