import { closestMatch } from 'leven';
import type { FieldPath } from '../errors.js';
import type { Reader } from './reader.js';
import { shownText } from './shown.js';

/** Up to so many known names are listed where none is near. */
const MOST_LISTED = 12;

/**
 * Refuses keys that an input object does not have. Returns the known names that were meant: those are
 * misspelt, not missing. Internal.
 */
export function refuseUnknown(
  reader: Reader,
  fields: Readonly<Record<string, unknown>>,
  path: FieldPath,
  known: Readonly<Record<string, unknown>>,
): ReadonlySet<string> {
  let all = NONE;
  for (const key of Object.keys(fields)) {
    if (Object.hasOwn(known, key)) continue;
    const { message, meant } = unknownField(key, Object.keys(known));
    const params = { key: shownText(key), ...(meant === undefined ? {} : { meant }) };
    reader.fail('UNKNOWN_FIELD', [...path, key], message, params);
    if (meant !== undefined) all = new Set([...all, meant]);
  }
  return all;
}

const NONE: ReadonlySet<string> = new Set();

/** The words for an unknown key, and the known one that was meant, if one is near. Internal. */
export function unknownField(
  key: string,
  known: readonly string[],
): { readonly message: string; readonly meant: string | undefined } {
  const meant = key.length > 60 ? undefined : nearest(key, known);
  if (meant !== undefined) return { message: `unknown field. Did you mean ${meant}?`, meant };
  const list = known.slice(0, MOST_LISTED).join(', ');
  const rest = known.length > MOST_LISTED ? ' ...' : '';
  const takes = known.length === 0 ? '' : `. This object takes ${list}${rest}`;
  return { message: `unknown field${takes}`, meant };
}

/** The known name that is like a key: letters swapped or missing, another case, singular or plural. */
function nearest(key: string, known: readonly string[]): string | undefined {
  const plain = key.toLowerCase();
  const sameLetters =
    known.find((name) => name.toLowerCase() === plain) ??
    known.find((name) => lettersOf(name) === lettersOf(key));
  if (sameLetters !== undefined) return sameLetters;
  const maxDistance = Math.max(1, Math.floor(key.length / 3));
  return closestMatch(key, [...known], { maxDistance });
}

/** The letters of a name in one order, whatever theirs: `lenght` has those of `length`. */
const lettersOf = (name: string): string => Array.from(name.toLowerCase()).sort().join('');
