/** A copy of an object without some of its fields. */
export function without<T extends object, K extends keyof T>(
  whole: T,
  ...names: readonly K[]
): Omit<T, K> {
  const copy = { ...whole };
  for (const name of names) Reflect.deleteProperty(copy, name);
  return copy;
}
