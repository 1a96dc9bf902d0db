import { fault, type SettlineError } from '../errors.js';
import { unitsOf, type Dimension } from './catalogue.js';
import { READING_REASONS, type ReadingReason } from './reading-reasons.js';
import { shownText } from '../shown-text.js';
import { shown } from './shown.js';

/** The error for text that cannot be read: reason, position and text. Internal. */
export function readingFault(
  reason: ReadingReason,
  text: string,
  position: number,
  hint = '',
): SettlineError {
  const what = `cannot read ${shown(text)}: ${READING_REASONS[reason]}`;
  const message = `${what} (at character ${position + 1})${hint === '' ? '' : `. ${hint}`}`;
  return fault('TEXT_UNREADABLE', message, { reason, text: shownText(text), position });
}

/** The error for a number without a unit. Internal. */
export function unitMissing(
  dimension: Dimension,
  value: unknown,
  position?: number,
): SettlineError {
  const choices = unitsOf(dimension).join(', ');
  const message = `${shown(value)} has no unit. Write it with one of ${choices}`;
  return fault('UNIT_MISSING', message, {
    choices,
    ...(position === undefined ? {} : { position }),
  });
}

/** The error for a word that is not a unit of the dimension. Internal. */
export function unitUnknown(dimension: Dimension, word: string, position: number): SettlineError {
  const choices = unitsOf(dimension).join(', ');
  const message = `${shown(word)} is not a unit of ${dimension}. Use one of ${choices}`;
  return fault('UNIT_UNKNOWN', message, { unit: shownText(word), choices, position });
}
