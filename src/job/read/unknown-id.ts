import leven from 'leven';
import type { FieldPath } from '../../errors.js';
import type { Reader } from '../../input/reader.js';
import { shown, shownText } from '../../input/shown.js';

/** Ids that a message lists. */
const MOST_LISTED = 7;
/** Among more ids than a crew writes, the closest ones are not looked for. */
const MOST_COMPARED = 200;

interface Named {
  /** What has the id: `stake`. */
  readonly what: string;
  readonly id: string;
  /** The ids of the job; undefined for one that could not be read. */
  readonly ids: readonly (string | undefined)[];
}

/**
 * Refuses an id that is not in the job. An id that could not be read, or one that is there twice,
 * may be the one that is named. Returns whether the id may be used. Internal.
 */
export function requireId(reader: Reader, path: FieldPath, { what, id, ids }: Named): boolean {
  if (ids.includes(id) || ids.includes(undefined)) return true;
  const known = ids.filter((one) => one !== undefined);
  if (new Set(known).size < known.length) return true;
  reader.fail('UNKNOWN_ID', path, `no ${what} has the id ${shown(id)}${use(id, known)}`, { id });
  return false;
}

function use(id: string, ids: readonly string[]): string {
  if (ids.length === 0) return '';
  const listed = closest(id, ids);
  const more = ids.length - listed.length;
  const rest = more === 0 ? '' : `, or one of ${more} more`;
  return `. Use ${listed.map(shownText).join(', ')}${rest}`;
}

/** The ids closest to one, in their own order. */
function closest(id: string, ids: readonly string[]): readonly string[] {
  if (ids.length <= MOST_LISTED || ids.length > MOST_COMPARED) return ids.slice(0, MOST_LISTED);
  const apart = ids.map((one, place) => ({ one, place, by: leven(id, one) }));
  const near = apart.sort((a, b) => a.by - b.by).slice(0, MOST_LISTED);
  return near.sort((a, b) => a.place - b.place).map(({ one }) => one);
}
