/** True for equal values: what the test of the examples takes as equal, fields that are undefined left out. */
export function isSame(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Object.prototype.toString.call(a) !== Object.prototype.toString.call(b)) return false;
  if (a instanceof Map && b instanceof Map) return isSame([...a], [...b]);
  if (a instanceof Set && b instanceof Set) return isSame([...a], [...b]);
  if (Array.isArray(a) && Array.isArray(b) && a.length !== b.length) return false;
  const [own, other] = [givenKeys(a), givenKeys(b)];
  return (
    own.length === other.length && own.every((key) => isSame(fieldOf(a, key), fieldOf(b, key)))
  );
}

const fieldOf = (value: object, key: string): unknown => (value as Record<string, unknown>)[key];

const givenKeys = (value: object): string[] =>
  Object.keys(value).filter((key) => fieldOf(value, key) !== undefined);
