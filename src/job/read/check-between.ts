import type { FieldPath } from '../../errors.js';
import type { Reader } from '../../input/reader.js';
import { type PartJob, type PartPavement } from './part-job.js';
import { requireId } from './unknown-id.js';

/** Checks that the two strings of a table of depths are different strings of the pavement. Internal. */
export function checkBetween(
  reader: Reader,
  { stringLines, pavements = [] }: PartJob,
  { pavement, path }: { readonly pavement: PartPavement; readonly path: FieldPath },
): void {
  const between = pavement.betweenStrings;
  if (between === undefined || stringLines === undefined) return;
  // the strings of a pavement whose id is there twice are not known
  if (pavements.filter((one) => one?.id === pavement.id).length > 1) return;
  const own = stringLines.filter((line) => line?.pavement === pavement.id);
  const ids = own.map((line) => line?.id);
  // a string that could not be read may be the one named here
  if (stringLines.includes(undefined)) return;
  for (const name of ['from', 'to'] as const) {
    const id = between[name];
    if (id === undefined) continue;
    requireId(reader, [...path, name], { what: 'string of this pavement', id, ids });
  }
  if (between.from === undefined || between.from !== between.to) return;
  reader.fail('DUPLICATE_ID', [...path, 'to'], 'name two different strings', { id: between.from });
}
