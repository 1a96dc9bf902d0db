type WithoutGaps<T> = { [K in keyof T]: Exclude<T[K], undefined> };

/** An object without the fields that are undefined. Internal. */
export function withoutGaps<T extends object>(fields: T): WithoutGaps<T> {
  const known = Object.entries(fields).filter(([, value]) => value !== undefined);
  return Object.fromEntries(known) as WithoutGaps<T>;
}
