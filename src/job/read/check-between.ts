import type { FieldPath } from '../../errors.js';
import type { Reader } from '../../input/reader.js';
import { type PartJob, type PartPavement } from './part-job.js';
import { unknownId } from './unknown-id.js';

/** Checks that the two strings of a table of depths are different strings of the pavement. Internal. */
export function checkBetween(
  reader: Reader,
  { stringLines }: PartJob,
  { pavement, path }: { readonly pavement: PartPavement; readonly path: FieldPath },
): void {
  const between = pavement.betweenStrings;
  if (between === undefined || stringLines === undefined) return;
  const own = stringLines.filter((line) => line?.pavement === pavement.id);
  const ids = own.map((line) => line?.id);
  // a string that could not be read may be the one named here
  if (ids.includes(undefined) || stringLines.includes(undefined)) return;
  const known = ids.filter((id) => id !== undefined);
  for (const name of ['from', 'to'] as const) {
    const id = between[name];
    if (id === undefined || known.includes(id)) continue;
    reader.fail('UNKNOWN_ID', [...path, name], unknownId('string of this pavement', id, known), {
      id,
    });
  }
  if (between.from === undefined || between.from !== between.to) return;
  reader.fail('DUPLICATE_ID', [...path, 'to'], 'name two different strings', { id: between.from });
}
