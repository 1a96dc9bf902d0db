import { fault } from '../../errors.js';
import { readNumber, readOptions } from '../read-options.js';
import { flatProfile, height, station, type BulkProfile } from './flat-profile.js';
import { scanByHulls } from './scan-by-hulls.js';
import { scanDirectly } from './scan-directly.js';

/** The straightedge that is slid along a profile. */
export interface ScanStraightedgeOptions {
  /** Length of the straightedge [metres], more than zero. */
  readonly length: number;
}

/** The greatest gap under a straightedge along a long profile, in metres. */
export interface ScannedStraightedge {
  /** Between the edge and the deepest reading below it [metres]; 0 where there is no gap. */
  readonly greatestGap: number;
  /** Station of the reading below the gap; of the first contact where there is no gap. */
  readonly at: number;
  /** The two readings that the edge rests on, as `[station, height]`. */
  readonly contacts: readonly [readonly [number, number], readonly [number, number]];
}

/**
 * The greatest gap under a straightedge that is slid along a long profile: the twin of `straightedge`
 * in floats, for thousands to millions of readings. Same rule, same contacts. For each
 * reading the steepest one within reach is found, and the deepest one below the chord of the two. It
 * takes n log m steps for n readings, m of them under the edge: with many under it both are found on
 * the hulls of ranges; with few, by looking at each.
 *
 * Heights and stations are taken from the contacts before they are multiplied. The gap is right to
 * within 4e-16 times the largest coordinate (a nanometre at 1 000 000 m) and 1e-15 times the largest
 * difference of height under the edge; gaps that are equal to that may be taken for each other.
 *
 * @param profile - at least 2 readings, stations growing [metres]: `[station, height]` pairs, or flat;
 *   not changed
 * @returns greatest gap, its station and the two contacts [metres]
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
    throw fault('READINGS_TOO_SPARSE', 'nowhere do two readings stand under the straightedge');
  }
  const scan = longest > LONG ? scanByHulls : scanDirectly;
  const { index, from, to, gap } = scan(flat, reach);
  return Object.freeze({
    greatestGap: gap + 0,
    at: station(flat, index) + 0,
    contacts: Object.freeze([reading(flat, from), reading(flat, to)] as const),
  });
}

/** From so many readings under the edge on, hulls are faster than looking at each. */
const LONG = 400;

/** The last reading that an edge reaches which is set down on each. */
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
