import { shown, shownText } from '../../input/shown.js';

/** The message for an id that is not in the job; it lists the ids that are. Internal. */
export function unknownId(what: string, id: string, ids: readonly string[]): string {
  const known = ids.length === 0 ? '' : `. Use ${ids.slice(0, 7).map(shownText).join(', ')}`;
  return `no ${what} has the id ${shown(id)}${known}`;
}
