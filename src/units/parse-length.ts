import { fault } from '../errors.js';
import type { LengthUnit } from './catalogue.js';
import {
  digit,
  isFootMark,
  isForeignDigit,
  isHidden,
  isHyphen,
  isInchMark,
  isLetter,
  isQualifier,
  isSlash,
  isSpace,
  skipSpaces,
  superscript,
} from './characters.js';
import { Wide } from './decimal.js';
import { lengthWord } from './length-words.js';
import { fromSI, fromUnit, type Length } from './quantity.js';
import { quickLength } from './quick-length.js';
import {
  addRatios,
  compareRatios,
  multiplyRatios,
  negateRatio,
  ratio,
  ZERO_RATIO,
} from './ratio.js';
import { readingFault } from './reading-fault.js';
import { scanAmount, startsAmount, type Amount } from './scan-amount.js';

/** How a length may be written beyond the default. */
export interface ParseLengthOptions {
  /** Accept the US survey foot (`us-ft`), retired after 2022. Default false. */
  readonly surveyFoot?: boolean;
  /** Read `1,5 m` as 1.5 m; a point is then refused. Default false. */
  readonly decimalComma?: boolean;
}

/** A length read from text, with what had to be understood. */
export interface LengthReading {
  readonly length: Length;
  /** True where the inch mark was left off: `7' 3`. */
  readonly impliedInches: boolean;
}

/** No tape divides an inch finer. */
const FINEST_DENOMINATOR = 128;
const LONGEST_TEXT = 120;
/** Beyond any map coordinate: a northing reaches 10 000 km. */
const FURTHEST = fromUnit('length', ratio(new Wide(100_000)), 'km');

/** How many inches the units of a compound hold; only these may stand together. */
const INCHES_IN: Partial<Record<LengthUnit, number>> = { yd: 36, ft: 12, in: 1 };

/**
 * Reads a length the way it is written on a tape, a rod or a drawing, exactly.
 *
 * Accepted: feet, inches and fraction (`7' 3 5/8"`, `7'-3½"`, `7 ft 3 in`, `87-1/2"`), decimal feet
 * or inches (`7.3'`), yards, and one SI unit (`1.675 m`, `25.4 mm`). A unit is needed; units
 * descend; only the last part may carry a fraction or decimals; a sign covers the whole. Text that
 * could be read in two ways is refused with the reason and the place.
 *
 * @param text - up to 120 characters, with its unit, up to 100 000 km
 * @returns the exact length
 * @throws one of the reading codes (`NO_UNIT`, `RANGE`, `COMMA`, `IMPROPER_MIXED` ...), with
 *   `params.position`, the place of the fault counted from 0
 * @example
 * parseLength(`7' 3 5/8"`).to('in').toString() //=> '87.625'
 * parseLength('1,5 m', { decimalComma: true }).to('mm').toString() //=> '1500'
 */
export function parseLength(text: string, options?: ParseLengthOptions): Length {
  const quick = typeof text === 'string' && options === undefined ? quickLength(text) : undefined;
  if (quick !== undefined) return fromSI('length', quick);
  return readLengthText(text, options).length;
}

/**
 * Like {@link parseLength}, and says where a unit had to be understood.
 *
 * @example
 * readLengthText(`7' 3`).impliedInches //=> true
 */
export function readLengthText(text: string, options: ParseLengthOptions = {}): LengthReading {
  if (typeof text !== 'string') {
    throw fault('WRONG_TYPE', `expected a length as text, got ${typeof text}`);
  }
  if (text.length > LONGEST_TEXT) throw readingFault('TOO_LONG', text, LONGEST_TEXT);
  const start = skipSpaces(text, 0);
  if (start === text.length) throw readingFault('EMPTY', text, 0);
  const sign = scanSign(text, start);
  const parts = scanParts(text, sign.end, options);
  const length = addParts(parts, sign.isNegative);
  if (length.abs().compare(FURTHEST) > 0) throw readingFault('OUT_OF_RANGE', text, start);
  return { length, impliedInches: parts.at(-1)?.isImplied === true };
}

interface Part {
  readonly amount: Amount;
  readonly unit: LengthUnit;
  readonly isImplied: boolean;
  readonly end: number;
}

function addParts(parts: readonly Part[], isNegative: boolean): Length {
  const last = parts.at(-1);
  if (last === undefined) return fromUnit('length', ZERO_RATIO, 'm');
  let sum = last.amount.value;
  for (const { amount, unit } of parts.slice(0, -1)) {
    const held = (INCHES_IN[unit] ?? 1) / (INCHES_IN[last.unit] ?? 1);
    sum = addRatios(sum, multiplyRatios(amount.value, ratio(new Wide(held))));
  }
  return fromUnit('length', isNegative ? negateRatio(sum) : sum, last.unit);
}

function scanSign(text: string, start: number): { isNegative: boolean; end: number } {
  const isNegative = isHyphen(text, start);
  if (!isNegative && text[start] !== '+') return { isNegative: false, end: start };
  const next = start + 1;
  if (isHyphen(text, next) || text[next] === '+') throw readingFault('SIGN_RUN', text, next);
  if (isSpace(text, next)) throw readingFault('SIGN_SPACE', text, next);
  return { isNegative, end: next };
}

function scanParts(text: string, start: number, options: ParseLengthOptions): Part[] {
  const parts: Part[] = [];
  let at = start;
  do {
    const previous = parts.at(-1);
    const part = scanPart(text, at, previous, options);
    if (previous !== undefined) checkOrder(text, previous, part);
    parts.push(part);
    at = nextPart(text, part);
  } while (at < text.length);
  return parts;
}

function scanPart(
  text: string,
  at: number,
  previous: Part | undefined,
  options: ParseLengthOptions,
): Part {
  if (!startsAmount(text, at, options.decimalComma)) throw notAnAmount(text, at, previous);
  const amount = scanAmount(text, at, {
    finest: FINEST_DENOMINATOR,
    decimalComma: options.decimalComma === true,
  });
  const unitAt = skipSpaces(text, amount.end);
  const word = scanUnit(text, unitAt, options);
  if (word !== undefined) return { amount, unit: word.unit, isImplied: false, end: word.end };
  if (previous === undefined) throw missingUnit(text, unitAt);
  const isTight = isLetter(text, previous.end - 1) && amount.start === previous.end;
  if (previous.unit !== 'ft' || isTight || unitAt < text.length) {
    throw unitAt < text.length && !isHyphen(text, unitAt)
      ? strayCharacter(text, unitAt)
      : readingFault('TRAILING_NUMBER', text, amount.start);
  }
  return { amount, unit: 'in', isImplied: true, end: text.length };
}

interface UnitWord {
  readonly unit: LengthUnit;
  readonly end: number;
}

function scanUnit(text: string, at: number, options: ParseLengthOptions): UnitWord | undefined {
  if (isInchMark(text, at)) return markEnd(text, 'in', at + 1);
  if (isFootMark(text, at)) {
    return isFootMark(text, at + 1) ? markEnd(text, 'in', at + 2) : markEnd(text, 'ft', at + 1);
  }
  return isLetter(text, at) ? scanWord(text, at, options) : undefined;
}

function markEnd(text: string, unit: LengthUnit, end: number): UnitWord {
  const another = isInchMark(text, end) ? 'in' : isFootMark(text, end) ? 'ft' : undefined;
  if (another !== undefined) {
    throw readingFault(another === unit ? 'MARK_RUN' : 'UNIT_RUN', text, end);
  }
  return { unit, end };
}

function scanWord(text: string, at: number, options: ParseLengthOptions): UnitWord {
  let end = skipLetters(text, at);
  const tail = /^(?:us|ft)$/i.test(text.slice(at, end)) ? surveyTail(text, end) : end;
  const unit = lengthWord(text.slice(at, tail));
  if (unit === undefined) {
    const isProduct = /^x$/i.test(text.slice(at, end));
    throw readingFault(isProduct ? 'PRODUCT' : 'UNKNOWN_WORD', text, at);
  }
  if (unit === 'wrong-case') throw readingFault('CASE', text, at);
  if (unit === 'ft-us' && options.surveyFoot !== true) throw readingFault('SURVEY_FOOT', text, at);
  end = tail;
  if (text[end] === '.') end += 1;
  return { unit, end };
}

/** End of `us-ft`, `us ft` or `ft-us`, where the word at hand is `us` or `ft`. */
function surveyTail(text: string, end: number): number {
  const tail = text.slice(end, end + 3).toLowerCase();
  const isTail = tail === '-ft' || tail === '-us' || tail === ' ft';
  return isTail && !isLetter(text, end + 3) ? end + 3 : end;
}

function skipLetters(text: string, start: number): number {
  let at = start;
  while (isLetter(text, at)) at += 1;
  return at;
}

/** Where the next part begins, past spaces or a hyphen; the end of the text where there is none. */
function nextPart(text: string, part: Part): number {
  const next = skipSpaces(text, part.end);
  if (next === text.length) return next;
  if (!isHyphen(text, next)) return next;
  if (isHyphen(text, next + 1)) throw readingFault('DOUBLE_HYPHEN', text, next + 1);
  const after = skipSpaces(text, next + 1);
  if (digit(text, after) < 0 && !startsAmount(text, after)) {
    throw readingFault('DANGLING_HYPHEN', text, next);
  }
  if (next > part.end && after === next + 1) throw readingFault('HYPHEN_SIGN', text, next);
  return after;
}

function checkOrder(text: string, previous: Part, part: Part): void {
  const larger = INCHES_IN[previous.unit];
  const smaller = INCHES_IN[part.unit];
  const at = part.amount.start;
  if (larger === undefined || smaller === undefined) {
    const bothMetric = larger === undefined && smaller === undefined && !isSurvey(previous, part);
    throw readingFault(bothMetric ? 'MIXED_METRIC' : 'MIXED_SYSTEMS', text, at);
  }
  if (larger === smaller) throw readingFault('REPEATED_UNIT', text, at);
  if (larger < smaller) throw readingFault('UNIT_ORDER', text, at);
  if (!previous.amount.isWhole) throw readingFault('FRACTIONAL_MAJOR', text, previous.amount.start);
  const whole = ratio(new Wide(larger / smaller));
  if (compareRatios(part.amount.value, whole) >= 0) throw readingFault('MINOR_OVERFLOW', text, at);
}

const isSurvey = (a: Part, b: Part): boolean => a.unit === 'ft-us' || b.unit === 'ft-us';

function missingUnit(text: string, at: number) {
  if (at === text.length) return readingFault('NO_UNIT', text, at);
  if (isHyphen(text, at)) return readingFault('DANGLING_HYPHEN', text, at);
  return strayCharacter(text, at);
}

function notAnAmount(text: string, at: number, previous: Part | undefined) {
  if (isFootMark(text, at) || isInchMark(text, at)) {
    return readingFault(previous === undefined ? 'NO_NUMBER' : 'UNIT_RUN', text, at);
  }
  if (!isLetter(text, at)) {
    return at === text.length ? readingFault('NO_NUMBER', text, at) : strayCharacter(text, at);
  }
  const word = text.slice(at, skipLetters(text, at));
  if (/^x$/i.test(word)) return readingFault('PRODUCT', text, at);
  if (lengthWord(word) === undefined) return readingFault('UNKNOWN_WORD', text, at);
  return readingFault(previous === undefined ? 'NO_NUMBER' : 'UNIT_RUN', text, at);
}

/** The reason for a character that has no place where it stands. */
function strayCharacter(text: string, at: number) {
  const character = text.charAt(at);
  if (character === ':') return readingFault('RATIO', text, at);
  if (character === ',') return readingFault('COMMA', text, at);
  if (character === '.') return readingFault('TRAILING_POINT', text, at);
  if (character === '×' || character === '*') return readingFault('PRODUCT', text, at);
  if (isSlash(text, at)) return readingFault('RATE', text, at);
  if (isQualifier(text, at)) return readingFault('QUALIFIER', text, at);
  if (superscript(text, at) >= 0) return readingFault('SUPERSCRIPT', text, at);
  if (isHidden(text, at)) return readingFault('HIDDEN_CHARACTER', text, at);
  if (isForeignDigit(text, at)) return readingFault('NON_ASCII_DIGIT', text, at);
  return readingFault('BAD_CHARACTER', text, at);
}
