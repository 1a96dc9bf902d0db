import { custom, list } from '../input/field.js';
import type { Field } from '../input/shape.js';

/** Two values of one kind, such as two diagonals. Internal. */
export function pair<T>(item: Field<T>, of: string): Field<readonly [T, T]> {
  const both = list(item, { of, least: 2, most: 2 });
  // a stand-in with gaps is never used: the reader has a fault
  return custom((reader, value, path) => both.read(reader, value, path) as readonly [T, T]);
}
