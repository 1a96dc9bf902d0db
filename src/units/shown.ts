import { shownText } from '../shown-text.js';
import { isDecimal } from './decimal.js';
import { isQuantity } from './quantity-mark.js';

/** An invalid value, as shown in a message. Internal. */
export function shown(value: unknown): string {
  if (value === null) return 'null';
  if (Array.isArray(value)) return 'a list';
  if (isQuantity(value)) return aOrAn(value.dimension);
  if (isDecimal(value)) return decimalText(value);
  if (typeof value === 'object') return 'an object';
  if (typeof value === 'string') return JSON.stringify(shownText(value));
  if (typeof value === 'number' || typeof value === 'boolean') return `${value}`;
  return typeof value;
}

function decimalText(value: unknown): string {
  try {
    return shownText(String(value));
  } catch {
    // it only looked like a decimal
    return 'an object';
  }
}

/** A word with its article: a length, an area. Internal. */
export const aOrAn = (word: string): string => (/^[aeiou]/.test(word) ? `an ${word}` : `a ${word}`);
