import type { LengthUnit } from '../units/catalogue.js';
import { lengthWord } from '../units/length-words.js';
import type { Length } from '../units/quantity.js';
import { isPlain } from './plain.js';

/** Enough digits to tell two lengths apart that differ slightly. */
const DIGITS = 6;

/**
 * A calculated length for a message, in the unit the caller used for another one: feet are answered
 * in feet. Internal.
 */
export function likeWritten(worked: Length, given: unknown): string {
  const unit = unitOf(given);
  return `${worked.to(unit).toSignificantDigits(DIGITS).toString()} ${unit}`;
}

const MARKS: Readonly<Record<string, LengthUnit>> = {
  "'": 'ft',
  '′': 'ft',
  '’': 'ft',
  '"': 'in',
  '″': 'in',
  '”': 'in',
};

/** The first unit of a length as written: feet of `7' 3 5/8"`; metres if there is none. */
function unitOf(given: unknown): LengthUnit {
  const text: unknown = isPlain(given) ? given['unit'] : given;
  if (typeof text !== 'string') return 'm';
  const [word = ''] = /[a-z][a-z-]*|['′’"″”]/i.exec(text) ?? [];
  const unit = MARKS[word] ?? lengthWord(word);
  return unit === undefined || unit === 'wrong-case' ? 'm' : unit;
}
