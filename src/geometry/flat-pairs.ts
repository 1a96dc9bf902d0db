import { fault } from '../errors.js';
import { isFloats } from './floats.js';

/** What a list of pairs holds, for the words of a fault. Internal. */
export interface PairWords {
  /** One entry, such as `a point [x, y]`. */
  readonly pair: string;
  /** The flat form, such as `x0, y0, x1, y1 ...`. */
  readonly flat: string;
}

/** Brings pairs of numbers into one flat array; a flat array is taken as it is. Internal. */
export function flatPairs(value: unknown, { pair, flat }: PairWords): Float64Array {
  if (isFloats(value)) {
    if (value.length % 2 === 0) return value;
    throw fault('WRONG_TYPE', `expected ${flat}, got an odd number of floats: ${value.length}`);
  }
  if (!Array.isArray(value)) {
    throw fault('WRONG_TYPE', `expected a Float64Array ${flat}, or a list with ${pair} each`);
  }
  const list: readonly unknown[] = value;
  // all entries are looked at before room is made: a list with holes may claim any length
  for (let i = 0; i < list.length; i += 1) {
    if (!isPair(list[i])) throw fault('WRONG_TYPE', `expected ${pair}`, {}, [i]);
  }
  const floats = new Float64Array(2 * list.length);
  list.forEach((entry, i) => {
    if (isPair(entry)) floats.set(entry, 2 * i);
  });
  return floats;
}

const isPair = (entry: unknown): entry is readonly [number, number] =>
  Array.isArray(entry) &&
  entry.length === 2 &&
  typeof entry[0] === 'number' &&
  typeof entry[1] === 'number';
