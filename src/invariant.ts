/**
 * A value that the code around it has made sure of. Without it this library is wrong, not the input.
 * Internal.
 */
export function known<T>(value: T | undefined, what: string): T {
  if (value === undefined) throw new Error(`settline is wrong: no ${what}`);
  return value;
}
