import { lastOf } from '../invariant.js';

/** Names in a row: `A, B and C`. Internal. */
export function listed(names: readonly (string | number)[]): string {
  const last = `${lastOf(names)}`;
  return names.length < 2 ? last : `${names.slice(0, -1).join(', ')} and ${last}`;
}
