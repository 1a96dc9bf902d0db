import type { FieldPath } from '../errors.js';
import type { Reader } from './reader.js';

/** Two fields that go together: one alone is refused. Internal. */
export function bothOrNeither(
  reader: Reader,
  fields: Readonly<Record<string, unknown>>,
  names: readonly [string, string],
  path: FieldPath,
): void {
  const missing = names.find((name) => fields[name] === undefined);
  const other = names.find((name) => fields[name] !== undefined);
  if (missing === undefined || other === undefined) return;
  reader.fail('REQUIRED', [...path, missing], `missing. ${other} needs it`, { needs: other });
}
