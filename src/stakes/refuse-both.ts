import type { Reader } from '../input/reader.js';

/** Refuses two fields of which one follows from the other. Internal. */
export function refuseBoth<T extends string>(
  reader: Reader,
  values: Readonly<Partial<Record<T, unknown>>>,
  [first, second]: readonly [T, T],
): void {
  if (values[first] === undefined || values[second] === undefined) return;
  const message = `give ${first} or ${second}, not both`;
  reader.fail('CONFLICTING_FIELDS', [second], message, { choices: `${first}, ${second}` });
}
