import { fault } from '../../errors.js';

/** Readings of a long profile: `[station, height]` pairs, or a flat `Float64Array` `s0, z0, s1, z1 ...`. */
export type BulkProfile = readonly (readonly [number, number])[] | Float64Array;

/** The chord of an edge and the deepest reading below it, by their numbers. Internal. */
export interface Deepest {
  readonly index: number;
  readonly from: number;
  readonly to: number;
  readonly gap: number;
}

/** Station of a reading. Internal. */
export const station = (flat: Float64Array, index: number): number => flat[2 * index] ?? Number.NaN;
/** Height of a reading. Internal. */
export const height = (flat: Float64Array, index: number): number =>
  flat[2 * index + 1] ?? Number.NaN;

/** Brings a profile into one flat array and checks it. Internal. */
export function flatProfile(profile: BulkProfile): Float64Array {
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
