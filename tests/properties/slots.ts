import { isQuantity } from 'settline/units';

/** An object or list of plain data. */
export const isBranch = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' &&
  value !== null &&
  !isQuantity(value) &&
  !ArrayBuffer.isView(value) &&
  (Array.isArray(value) || Object.getPrototypeOf(value) === Object.prototype);

/** A copy in which plain objects and lists may be changed. */
export function copied(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(copied);
  if (value instanceof Float64Array) return value.slice();
  if (!isBranch(value)) return value;
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, copied(part)]));
}

/** A field of an object or a place in a list. */
export type Slot = readonly [holder: Record<string, unknown>, key: string];

/** Every field and place of plain data, up to 400 and those in the last of them. */
export function slotsOf(value: unknown, found: Slot[] = []): Slot[] {
  if (!isBranch(value)) return found;
  for (const key of Object.keys(value)) {
    found.push([value, key]);
    if (found.length < 400) slotsOf(value[key], found);
  }
  return found;
}
