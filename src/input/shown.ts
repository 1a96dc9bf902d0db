import { isQuantity } from '../units/quantity.js';

/** No more of the caller's text goes into a message. */
const MOST_SHOWN = 40;

/** How a value that does not belong is shown in a message. */
export function shown(value: unknown): string {
  if (value === null) return 'null';
  if (Array.isArray(value)) return 'a list';
  if (isQuantity(value)) return `a ${value.dimension}`;
  if (typeof value === 'object') return 'an object';
  if (typeof value === 'string') return JSON.stringify(shownText(value));
  if (typeof value === 'number' || typeof value === 'boolean') return `${value}`;
  return typeof value;
}

/** The caller's text, cut where it is long. */
export const shownText = (text: string): string =>
  text.length > MOST_SHOWN ? `${text.slice(0, MOST_SHOWN - 3)}...` : text;
