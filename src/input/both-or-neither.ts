import type { FieldPath } from '../errors.js';
import type { Reader } from './reader.js';

/** Two fields that go together: one alone is refused. Internal. */
export function bothOrNeither(
  reader: Reader,
  fields: Readonly<Record<string, unknown>>,
  [first, second]: readonly [string, string],
  path: FieldPath,
): void {
  const [hasFirst, hasSecond] = [fields[first] !== undefined, fields[second] !== undefined];
  if (hasFirst === hasSecond) return;
  const [missing, other] = hasFirst ? [second, first] : [first, second];
  reader.fail('REQUIRED', [...path, missing], `missing. ${other} needs it`, { needs: other });
}
