import { fault } from '../errors.js';
import { forEachRange, type RangeHull } from './range-hulls.js';

/** Readings of a long profile: `[station, height]` pairs, or a flat `Float64Array` `s0, z0, s1, z1 ...`. */
export type BulkProfile = readonly (readonly [number, number])[] | Float64Array;

/** The greatest gap under a straightedge along a long profile, in metres. */
export interface ScannedStraightedge {
  readonly greatestGap: number;
  /** Station of the reading below the gap; of the first contact where there is no gap. */
  readonly at: number;
  /** The two readings that the edge rests on, as `[station, height]`. */
  readonly contacts: readonly [readonly [number, number], readonly [number, number]];
}

/**
 * The greatest gap under a straightedge that is slid along a long profile: the twin of `straightedge`
 * in floats, for thousands to millions of readings. Same rule, same contacts. It takes n log m steps
 * for n readings, m of them under the edge: for each reading the steepest one within reach, on the
 * upper hull of those, then the deepest one below that chord, on the lower hull of those between.
 *
 * Heights and stations are taken from the contacts before they are multiplied. The gap is right to
 * within 4e-16 times the largest coordinate (a nanometre at 1 000 000 m) and 1e-15 times the largest
 * difference of height under the edge; gaps that are equal to that may be taken for each other.
 *
 * @param profile - at least 2 readings, stations growing [metres]: `[station, height]` pairs, or flat;
 *   not changed
 * @param options.length - of the straightedge, more than zero [metres]
 * @returns greatest gap, its station and the two contacts [metres]
 * @throws `TOO_FEW_POINTS`, `WRONG_TYPE`, `NOT_FINITE`, `STATION_ORDER`, `NOT_POSITIVE`,
 *   `READINGS_TOO_SPARSE`
 * @source derived
 * @example
 * const edge = scanStraightedge([[0, 0], [1, -0.004], [2, -0.006], [3, 0]], { length: 3 });
 * edge.greatestGap //=> 0.006
 * edge.contacts //=> [[0, 0], [3, 0]]
 */
export function scanStraightedge(
  profile: BulkProfile,
  options: { readonly length: number },
): ScannedStraightedge {
  const flat = flatProfile(profile);
  const { length } = options;
  if (!(length > 0) || !Number.isFinite(length)) {
    throw fault('NOT_POSITIVE', 'the length must be more than zero', {}, ['length']);
  }
  const contacts = steepestWithin(flat, length);
  if (contacts.every((to, i) => to === i)) {
    throw fault('READINGS_TOO_SPARSE', 'nowhere do two readings stand under the straightedge');
  }
  const { index, from, gap } = deepestBelow(flat, contacts);
  const to = contacts[from] ?? from;
  return Object.freeze({
    greatestGap: gap,
    at: station(flat, index),
    contacts: Object.freeze([reading(flat, from), reading(flat, to)] as const),
  });
}

/** For each reading the one that is steepest seen from it, the farthest of equals, within reach. */
function steepestWithin(flat: Float64Array, length: number): Int32Array {
  const reach = lastWithin(flat, length);
  const steepest = reach.map((_, i) => i);
  const slopes = new Float64Array(reach.length).fill(-Infinity);
  forEachRange({ profile: flat, ends: reach, side: 1 }, (i, hull) => {
    const corner = steepestCorner(flat, i, hull);
    const slope = slopeTo(flat, i, corner);
    const known = slopes[i] ?? slope;
    if (slope < known || (slope === known && corner < (steepest[i] ?? corner))) return;
    slopes[i] = slope;
    steepest[i] = corner;
  });
  return steepest;
}

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

interface Deepest {
  readonly index: number;
  readonly from: number;
  readonly gap: number;
}

/** The deepest reading below the chords from each reading to its contact, the first of equals. */
function deepestBelow(flat: Float64Array, contacts: Int32Array): Deepest {
  const lies = contacts.findIndex((to, i) => to > i);
  let found: Deepest = { index: lies, from: lies, gap: 0 };
  // of the readings up to the contact, the contact itself is left out
  const ends = contacts.map((to, i) => Math.max(i, to - 1));
  forEachRange({ profile: flat, ends, side: -1 }, (i, hull) => {
    const to = contacts[i] ?? i;
    const index = deepestCorner(flat, [i, to], hull);
    const gap = gapBelow(flat, [i, to], index);
    if (isDeeper({ index, from: i, gap }, found)) found = { index, from: i, gap };
  });
  return found;
}

/** Whether a gap is greater, or the same and further to the left. */
function isDeeper(one: Deepest, other: Deepest): boolean {
  if (one.gap !== other.gap || one.gap === 0) return one.gap > other.gap;
  return one.index < other.index || (one.index === other.index && one.from < other.from);
}

/** The corner of an upper hull that is steepest seen from a reading left of it, the last of equals. */
function steepestCorner(flat: Float64Array, from: number, hull: RangeHull): number {
  let [low, high] = [0, hull.count() - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    const ahead = slopeTo(flat, from, hull.at(middle + 1));
    if (ahead >= slopeTo(flat, from, hull.at(middle))) low = middle + 1;
    else high = middle;
  }
  return hull.at(low);
}

/** The corner of a lower hull that is deepest below a chord, the first of equals. */
function deepestCorner(
  flat: Float64Array,
  chord: readonly [number, number],
  hull: RangeHull,
): number {
  let [low, high] = [0, hull.count() - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    const ahead = gapBelow(flat, chord, hull.at(middle + 1));
    if (ahead > gapBelow(flat, chord, hull.at(middle))) low = middle + 1;
    else high = middle;
  }
  return hull.at(low);
}

const slopeTo = (flat: Float64Array, from: number, to: number): number =>
  (height(flat, to) - height(flat, from)) / (station(flat, to) - station(flat, from));

function gapBelow(flat: Float64Array, [from, to]: readonly [number, number], at: number): number {
  const rise = height(flat, to) - height(flat, from);
  const run = station(flat, to) - station(flat, from);
  const along = station(flat, at) - station(flat, from);
  return (rise * along) / run - (height(flat, at) - height(flat, from));
}

const station = (flat: Float64Array, index: number): number => flat[2 * index] ?? Number.NaN;
const height = (flat: Float64Array, index: number): number => flat[2 * index + 1] ?? Number.NaN;
const reading = (flat: Float64Array, index: number): readonly [number, number] =>
  Object.freeze([station(flat, index), height(flat, index)] as const);

/** Brings a profile into one flat array and checks it. */
function flatProfile(profile: BulkProfile): Float64Array {
  const flat = profile instanceof Float64Array ? profile : flatten(profile);
  if (flat.length < 4 || flat.length % 2 !== 0) {
    throw fault('TOO_FEW_POINTS', 'a profile needs two readings or more, each station and height');
  }
  for (let i = 0; i < flat.length / 2; i += 1) {
    if (!Number.isFinite(station(flat, i)) || !Number.isFinite(height(flat, i))) {
      throw fault('NOT_FINITE', 'every station and height must be a finite number', {}, [i]);
    }
    if (i > 0 && station(flat, i) <= station(flat, i - 1)) {
      throw fault('STATION_ORDER', 'must lie beyond the one before', {}, [i]);
    }
  }
  return flat;
}

function flatten(profile: readonly (readonly [number, number])[]): Float64Array {
  if (!Array.isArray(profile)) throw fault('WRONG_TYPE', 'expected a list of [station, height]');
  const flat = new Float64Array(2 * profile.length);
  profile.forEach((pair: unknown, i) => {
    if (!isPair(pair)) throw fault('WRONG_TYPE', 'expected [station, height]', {}, [i]);
    flat.set(pair, 2 * i);
  });
  return flat;
}

const isPair = (pair: unknown): pair is readonly [number, number] =>
  Array.isArray(pair) &&
  pair.length === 2 &&
  typeof pair[0] === 'number' &&
  typeof pair[1] === 'number';
