import { fault } from '../../errors.js';
import { readNumber, readOptions } from '../read-options.js';
import { flatProfile, height, station, type BulkProfile } from './flat-profile.js';
import { scanByHulls } from './scan-by-hulls.js';
import { scanDirectly } from './scan-directly.js';

/** A straightedge to slide along a profile. */
export interface ScanStraightedgeOptions {
  /** Length of the straightedge [metres], more than zero. */
  readonly length: number;
}

/** The largest gap under a straightedge along a long profile, in metres. */
export interface ScannedStraightedge {
  /** Gap between the straightedge and the deepest reading below it [metres]; 0 if there is none. */
  readonly greatestGap: number;
  /** Station of the deepest reading; of the first contact if there is no gap. */
  readonly at: number;
  /** The two readings that the straightedge rests on, as `[station, height]`. */
  readonly contacts: readonly [readonly [number, number], readonly [number, number]];
}

/**
 * The largest gap under a straightedge that slides along a long profile. This is the floating-point
 * version of `straightedge`, for thousands to millions of readings, with the same rule and the same
 * contacts. For each reading it finds the steepest reading within reach, and the deepest one below the
 * chord of the two. It takes n log m steps for n readings, m of them under the straightedge: many are
 * searched on the hulls of ranges, a few one by one.
 *
 * Heights and stations are measured from the contacts before they are multiplied. The gap is right to
 * within 4e-16 times the largest coordinate (a nanometre at 1 000 000 m) and 1e-15 times the largest
 * height difference under the straightedge. Of gaps that are equal to within that, any may be chosen.
 *
 * @param profile - at least 2 readings with increasing stations [metres]: `[station, height]` pairs,
 *   or flat; not changed
 * @returns largest gap, its station and the two contacts [metres]
 * @throws `TOO_FEW`, `WRONG_TYPE`, `NOT_FINITE`, `OUT_OF_RANGE`, `STATION_ORDER`, `NOT_POSITIVE`,
 *   `READINGS_TOO_SPARSE`, `REQUIRED`, `UNKNOWN_FIELD`
 * @source derived
 * @example
 * const edge = scanStraightedge([[0, 0], [1, -0.004], [2, -0.006], [3, 0]], { length: 3 });
 * edge.greatestGap //=> 0.006
 * edge.contacts //=> [[0, 0], [3, 0]]
 */
export function scanStraightedge(
  profile: BulkProfile,
  options: ScanStraightedgeOptions,
): ScannedStraightedge {
  const flat = flatProfile(profile);
  const length = readNumber(readOptions(options, ['length'])['length'], ['length']);
  if (!(length > 0)) throw fault('NOT_POSITIVE', 'must be more than zero', {}, ['length']);
  const reach = lastWithin(flat, length);
  const longest = reach.reduce((most, end, i) => Math.max(most, end - i), 0);
  if (longest === 0) {
    throw fault(
      'READINGS_TOO_SPARSE',
      'the straightedge is shorter than every gap between readings. Use a longer one or take more readings',
    );
  }
  const scan = longest > LONG ? scanByHulls : scanDirectly;
  const { index, from, to, gap } = scan(flat, reach);
  return Object.freeze({
    greatestGap: gap + 0,
    at: station(flat, index) + 0,
    contacts: Object.freeze([reading(flat, from), reading(flat, to)] as const),
  });
}

/** From this many readings under the straightedge, hulls are faster than checking every reading. */
const LONG = 400;

/** For each reading, the last one that a straightedge set down on it reaches. */
function lastWithin(flat: Float64Array, length: number): Int32Array {
  const last = new Int32Array(flat.length / 2);
  let end = 0;
  for (let i = 0; i < last.length; i += 1) {
    while (end + 1 < last.length && station(flat, end + 1) - station(flat, i) <= length) end += 1;
    last[i] = end;
  }
  return last;
}

const reading = (flat: Float64Array, index: number): readonly [number, number] =>
  // adding nothing turns a negative zero into zero
  Object.freeze([station(flat, index) + 0, height(flat, index) + 0] as const);
