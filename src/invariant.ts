/**
 * A value that the code around it has made sure of. Without it this library is wrong, not the input.
 * Internal.
 */
export function known<T>(value: T | undefined, what: string): T {
  if (value === undefined) throw new Error(`settline is wrong: no ${what}`);
  return value;
}

/** A value that is neither missing nor null. Internal. */
export const present = <T>(value: T | null | undefined, what: string): T =>
  value ?? known<T>(undefined, what);

/** An entry that is known to be in the list. Internal. */
export const entry = <T>(list: readonly T[], index: number): T => known(list[index], 'such entry');

/** The last entry of a list that is known to have one. Internal. */
export const lastOf = <T>(list: readonly T[]): T => known(list.at(-1), 'last entry');
