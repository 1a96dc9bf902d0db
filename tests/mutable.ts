import type { AnyQuantity, Decimal } from 'settline/units';

/** A type whose fields may be set and taken away, all the way down; quantities stay as they are. */
export type Mutable<T> = T extends
  AnyQuantity | Decimal | string | number | boolean | null | undefined
  ? T
  : { -readonly [K in keyof T]: Mutable<T[K]> };

/** A copy that may be changed, all the way down. */
export const mutable = <T>(value: T): Mutable<T> => copyOf(value) as Mutable<T>;

function copyOf(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(copyOf);
  if (!isRecord(value)) return value;
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, copyOf(part)]));
}

const isRecord = (value: unknown): value is object =>
  typeof value === 'object' && value !== null && Object.getPrototypeOf(value) === Object.prototype;
