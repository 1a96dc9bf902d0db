import { isPlain } from './plain.js';
import type { Shape } from './shape.js';

/** An entry of a list as given; null if it is not an object, or has an unknown field. */
export type GivenEntry = Readonly<Record<string, unknown>> | null;

/**
 * The entries of a list as given, to find what was left out even if another field of the entry
 * could not be read. Empty if the value is not a list, or the list is too long. Internal.
 */
export const givenEntries = (value: unknown, shape: Shape, most: number): readonly GivenEntry[] =>
  Array.isArray(value) && value.length <= most
    ? Array.from(value, (entry: unknown) => (isClear(entry, shape) ? entry : null))
    : [];

const isClear = (entry: unknown, shape: Shape): entry is Readonly<Record<string, unknown>> =>
  isPlain(entry) && Object.keys(entry).every((key) => Object.hasOwn(shape, key));
