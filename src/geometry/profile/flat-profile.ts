import { fault, type SettlineError } from '../../errors.js';
import { flatPairs } from '../flat-pairs.js';
import { isInRange } from '../floats.js';

/** Readings of a long profile: `[station, height]` pairs, or a flat `Float64Array` `s0, z0, s1, z1 ...`. */
export type BulkProfile = readonly (readonly [number, number])[] | Float64Array;

/** A chord of the straightedge and the deepest reading below it, by number. Internal. */
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

/** Returns a profile as one flat array, checked. Internal. */
export function flatProfile(profile: unknown): Float64Array {
  const flat = flatPairs(profile, {
    pair: 'a reading [station, height]',
    flat: 's0, z0, s1, z1 ...',
  });
  const count = flat.length / 2;
  if (count < 2) {
    const words = `a profile needs two readings or more, got ${count}`;
    throw fault('TOO_FEW', words, { got: count });
  }
  for (let i = 0; i < count; i += 1) {
    if (!isInRange(station(flat, i)) || !isInRange(height(flat, i))) {
      throw beyond(i, [station(flat, i), height(flat, i)]);
    }
    if (i > 0 && station(flat, i) <= station(flat, i - 1)) {
      throw fault('STATION_ORDER', 'must be beyond the one before', {}, [i]);
    }
  }
  return flat;
}

function beyond(index: number, reading: readonly number[]): SettlineError {
  return reading.every(Number.isFinite)
    ? fault(
        'OUT_OF_RANGE',
        'a station or height is too large or too small for a site. Write metres',
        {},
        [index],
      )
    : fault('NOT_FINITE', 'every station and height must be a finite number', {}, [index]);
}
