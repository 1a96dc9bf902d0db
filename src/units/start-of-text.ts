import { fault } from '../errors.js';
import { isHyphen, isSpace, skipSpaces } from './characters.js';
import { checkOptions } from './check-options.js';
import { readingFault } from './reading-fault.js';
import { startsAmount } from './scan-amount.js';
import { shown } from './shown.js';

const LONGEST_TEXT = 120;

/** What is read, such as `a length`, and how it may be written. */
interface Reading {
  readonly what: string;
  readonly options: object;
  readonly checks: Parameters<typeof checkOptions>[1];
}

/** The first character of a measure that is no space, of a text that is not too long. Internal. */
export function startOfText(text: string, { what, options, checks }: Reading): number {
  if (typeof text !== 'string') {
    throw fault('WRONG_TYPE', `expected ${what} as text, got ${shown(text)}`);
  }
  checkOptions(options, checks);
  if (text.length > LONGEST_TEXT) throw readingFault('TOO_LONG', text, LONGEST_TEXT);
  const start = skipSpaces(text, 0);
  if (start === text.length) throw readingFault('EMPTY', text, 0);
  return start;
}

/** The sign of the number that a text starts with, and where its digits start. Internal. */
export function startOfNumber(
  text: string,
  start: number,
  decimalComma: boolean | undefined,
): { readonly isNegative: boolean; readonly from: number } {
  const isNegative = isHyphen(text, start);
  const from = isNegative || text[start] === '+' ? start + 1 : start;
  if (isSpace(text, from)) throw readingFault('SIGN_SPACE', text, from);
  if (!startsAmount(text, from, decimalComma)) throw readingFault('NO_NUMBER', text, from);
  return { isNegative, from };
}
