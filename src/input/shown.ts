import { isQuantity } from '../units/quantity.js';
import { shownText } from './shown-text.js';

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
