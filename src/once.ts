/** Makes something when it is first asked for, and keeps it. Internal. */
export function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => (made ??= { value: make() }).value;
}

/** Makes something for each key when it is first asked for, and keeps it. Internal. */
export function onceForEach<K, T>(
  make: (of: K) => T,
  keyOf: (of: K) => unknown = (of) => of,
): (of: K) => T {
  const made = new Map<unknown, () => T>();
  return (of) => {
    const key = keyOf(of);
    const known = made.get(key) ?? once(() => make(of));
    made.set(key, known);
    return known();
  };
}
