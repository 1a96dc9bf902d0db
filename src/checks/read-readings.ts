import type { FieldPath } from '../errors.js';
import type { Reader } from '../input/reader.js';

/** Reads a list of readings, each id once; `readRest` reads what else stands on one. Internal. */
export function readReadings<T extends object>(
  reader: Reader,
  value: unknown,
  readRest: (fields: Readonly<Record<string, unknown>>, path: FieldPath) => T,
): readonly (T & { readonly id: string })[] {
  const ids = new Set<string>();
  return reader.list(value, ['readings']).map((item, index) => {
    const path = ['readings', index];
    const fields = reader.object(item, path);
    const id = reader.text(fields['id'], [...path, 'id']);
    if (id !== '' && ids.has(id)) {
      reader.fail('DUPLICATE_ID', [...path, 'id'], `the reading ${id} stands twice`);
    }
    ids.add(id);
    return { id, ...readRest(fields, path) };
  });
}
