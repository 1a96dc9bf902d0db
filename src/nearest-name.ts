import { closestMatch } from 'leven';
import type { Issue } from './errors.js';
import { shownText } from './shown-text.js';

/** Number of known names to list if none is close. */
const MOST_LISTED = 12;

/** The message for an unknown key, with the closest known key, if any. Internal. */
export interface UnknownField {
  readonly message: string;
  readonly params: Issue['params'];
  readonly meant: string | undefined;
}

/** Describes an unknown key. No decimal code: the kernels use it too. Internal. */
export function unknownField(key: string, known: readonly string[]): UnknownField {
  const meant = key.length > 60 ? undefined : nearest(key, known);
  const shown = shownText(key);
  if (meant !== undefined) {
    return {
      message: `unknown field. Did you mean ${meant}?`,
      params: { key: shown, meant },
      meant,
    };
  }
  const list = known.slice(0, MOST_LISTED).join(', ');
  const rest = known.length > MOST_LISTED ? ' ...' : '';
  const takes = known.length === 0 ? '' : `. This object takes ${list}${rest}`;
  return { message: `unknown field${takes}`, params: { key: shown }, meant };
}

/**
 * The known name closest to a key: letters swapped or missing, another case, singular or plural.
 */
function nearest(key: string, known: readonly string[]): string | undefined {
  const plain = key.toLowerCase();
  const sameLetters =
    known.find((name) => name.toLowerCase() === plain) ??
    known.find((name) => lettersOf(name) === lettersOf(key));
  if (sameLetters !== undefined) return sameLetters;
  const maxDistance = Math.max(1, Math.floor(key.length / 3));
  return closestMatch(key, [...known], { maxDistance });
}

/** The letters of a name, sorted: `lenght` has the same as `length`. */
const lettersOf = (name: string): string => Array.from(name.toLowerCase()).sort().join('');
