import { fault } from '../errors.js';
import { isFloats } from './floats.js';

/** Words for the entries of a list of pairs, for a fault. Internal. */
export interface PairWords {
  /** One entry, such as `a point [x, y]`. */
  readonly pair: string;
  /** The flat form, such as `x0, y0, x1, y1 ...`. */
  readonly flat: string;
}

/** Returns pairs of numbers as one flat array; a flat array is returned as it is. Internal. */
export function flatPairs(value: unknown, { pair, flat }: PairWords): Float64Array {
  if (isFloats(value)) {
    if (value.length % 2 === 0) return value;
    throw fault('WRONG_TYPE', `expected ${flat}, got an odd number of floats: ${value.length}`);
  }
  if (!Array.isArray(value)) {
    throw fault('WRONG_TYPE', `expected a Float64Array ${flat}, or a list with ${pair} each`);
  }
  const list: readonly unknown[] = value;
  // all entries are checked before memory is taken: a sparse list can claim any length
  for (let i = 0; i < list.length; i += 1) {
    if (!isPair(list[i])) throw fault('WRONG_TYPE', `expected ${pair}`, {}, [i]);
  }
  const floats = new Float64Array(2 * list.length);
  for (let i = 0; i < list.length; i += 1) {
    const entry = list[i];
    if (!isPair(entry)) continue;
    floats[2 * i] = entry[0];
    floats[2 * i + 1] = entry[1];
  }
  return floats;
}

const isPair = (entry: unknown): entry is readonly [number, number] =>
  Array.isArray(entry) &&
  entry.length === 2 &&
  typeof entry[0] === 'number' &&
  typeof entry[1] === 'number';
