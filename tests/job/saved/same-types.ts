import { isQuantity } from 'settline/units';

/** What a field holds, in short: `length`, `number`, `null`, `list of 3`. */
function typeOf(value: unknown): string {
  if (isQuantity(value)) return `a quantity of ${value.dimension}`;
  if (Array.isArray(value)) return `a list of ${value.length}`;
  return value === null ? 'null' : typeof value;
}

const fieldsOf = (value: object): readonly string[] => [
  ...Object.keys(value),
  // what is left out of the JSON has a type too
  ...('working' in value && !Object.keys(value).includes('working') ? ['working'] : []),
  ...('to' in value && !isQuantity(value) ? ['to', 'toNumber'] : []),
];

/** Paths at which two results hold things of other types, and the number of fields compared. */
export function otherTypes(
  a: unknown,
  b: unknown,
  path = '',
): { readonly fields: number; readonly found: readonly string[] } {
  const [one, two] = [typeOf(a), typeOf(b)];
  const isList = Array.isArray(a) && path.endsWith('working');
  if (one !== two && !isList) return { fields: 1, found: [`${path}: ${one}, ${two}`] };
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) {
    return { fields: 1, found: [] };
  }
  if (isQuantity(a) || isList) return { fields: 1, found: [] };
  const names = [...new Set([...fieldsOf(a), ...fieldsOf(b)])];
  const parts = names.map((name) =>
    otherTypes(
      (a as Record<string, unknown>)[name],
      (b as Record<string, unknown>)[name],
      `${path}.${name}`,
    ),
  );
  return {
    fields: parts.reduce((sum, { fields }) => sum + fields, 1),
    found: parts.flatMap(({ found }) => found),
  };
}
