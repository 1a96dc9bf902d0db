import { isPlain } from './plain.js';
import type { Shape } from './shape.js';

/** An entry of a list as it was given; null for one that is no object, or has a field it must not have. */
export type GivenEntry = Readonly<Record<string, unknown>> | null;

/**
 * The entries of a list as they were given, to judge what was left out even where another field of the
 * entry could not be read. Empty for what is no list, or is too long. Internal.
 */
export const givenEntries = (value: unknown, shape: Shape, most: number): readonly GivenEntry[] =>
  Array.isArray(value) && value.length <= most
    ? Array.from(value, (entry: unknown) => (isClear(entry, shape) ? entry : null))
    : [];

const isClear = (entry: unknown, shape: Shape): entry is Readonly<Record<string, unknown>> =>
  isPlain(entry) && Object.keys(entry).every((key) => Object.hasOwn(shape, key));
