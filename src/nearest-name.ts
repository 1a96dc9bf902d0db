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

/**
 * Describes an unknown key. `missing` are the known names that are needed and not given. No decimal
 * code: the kernels use it too. Internal.
 */
export function unknownField(
  key: string,
  known: readonly string[],
  missing: readonly string[] = [],
): UnknownField {
  const meant = key.length > 60 ? undefined : nearest(key, known, missing);
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
 * The known name closest to a key: letters swapped or missing, another case, singular or plural, a
 * part of a name that is missing. One letter is close to nothing.
 */
function nearest(
  key: string,
  known: readonly string[],
  missing: readonly string[],
): string | undefined {
  const plain = key.toLowerCase();
  const sameLetters =
    known.find((name) => name.toLowerCase() === plain) ??
    known.find((name) => lettersOf(name) === lettersOf(key));
  if (sameLetters !== undefined) return sameLetters;
  if (plain === 'z') return known.find((name) => name === 'elevation');
  const word = plain.replace(/s$/, '');
  const longer = missing.filter((name) => name.toLowerCase().includes(word));
  if (word.length >= SHORTEST_PART && longer.length === 1) return longer[0];
  const names = known.filter((name) => name.length > 1 || plain.startsWith(name));
  const maxDistance = Math.max(1, Math.floor(key.length / 3));
  return key.length > 1 ? closestMatch(key, names, { maxDistance }) : undefined;
}

/** The shortest part of a name that names it. */
const SHORTEST_PART = 4;

/** The letters of a name, sorted: `lenght` has the same as `length`. */
const lettersOf = (name: string): string => Array.from(name.toLowerCase()).sort().join('');
