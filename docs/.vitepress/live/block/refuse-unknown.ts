import { SettlineError, type Issue } from 'settline/errors';
import type { JsonObject } from '../page/json-text.js';

/** Refuses fields that a block does not hand on to the library. */
export function refuseUnknown(rest: JsonObject): void {
  const [first, ...more] = Object.keys(rest).map((name): Issue => ({
    path: [name],
    code: 'UNKNOWN_FIELD',
    message: 'is not a field of this form. Remove it.',
    params: { got: name },
  }));
  if (first !== undefined) throw new SettlineError([first, ...more]);
}
