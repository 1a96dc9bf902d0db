import { fault } from '../errors.js';
import type { LengthUnit } from './catalogue.js';
import {
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
import { isFlag } from './check-options.js';
import { refuseGrouping } from './grouping.js';
import { lengthWord } from './length-words.js';
import { exactOf, fromSI, fromUnit, type Length } from './quantity.js';
import { quickLength } from './quick-length.js';
import {
  addRatios,
  compareRatios,
  multiplyRatios,
  negateRatio,
  wholeRatio,
  ZERO_RATIO,
} from './ratio.js';
import { readingFault, unitMissing, unitUnknown } from './reading-fault.js';
import { shownText } from '../shown-text.js';
import { shown } from './shown.js';
import { scanAmount, startsAmount, type Amount } from './scan-amount.js';
import { startOfText } from './start-of-text.js';

/** Ways to write a length beyond the default. */
export interface ParseLengthOptions {
  /** True to accept the US survey foot (`us-ft`), retired after 2022. Default: false. */
  readonly surveyFoot?: boolean;
  /** True to read `1,5 m` as 1.5 m; a decimal point is then refused. Default: false. */
  readonly decimalComma?: boolean;
}

const CHECKS = { surveyFoot: isFlag, decimalComma: isFlag };

/** A length read from text, and whether a unit was implied. */
export interface LengthReading {
  /** The exact length. */
  readonly length: Length;
  /** True if the inch mark was left off: `7' 3`. */
  readonly impliedInches: boolean;
}

/** The finest division of an inch on a tape. */
const FINEST_DENOMINATOR = 128;
/** More than any map coordinate: a northing reaches 10 000 km. */
const FURTHEST = fromUnit('length', wholeRatio(100_000), 'km');

/** Inches in each unit of a compound; only these units may be combined. */
const INCHES_IN: Partial<Record<LengthUnit, number>> = { mi: 63_360, yd: 36, ft: 12, in: 1 };

/**
 *
 * Reads a length the way it is written on a tape, a rod or a drawing, exactly.
 *
 * Accepted: feet, inches and fraction (`7' 3 5/8"`, `7'-3½"`, `7 ft 3 in`, `87-1/2"`, `4-inch`),
 * decimal feet or inches (`7.3'`), yards, miles, and one SI unit (`1.675 m`, `25.4 mm`). A unit is
 * needed. Units run from large to small, and only the last part may have a fraction or decimals. A
 * sign applies to the whole. Text that could be read in two ways (`11/2 in`, `6'.25`, `1,500 mm`
 * with a decimal comma) is refused with the reason and the position. A power of ten is read as
 * JavaScript prints it (`2.4e-16 m`).
 *
 * @param text - up to 120 characters, with its unit, up to 100 000 km
 * @returns the exact length
 * @throws `TEXT_UNREADABLE` with `params.reason`, one of {@link READING_REASONS}, and
 * `params.position`, the position of the fault, counted from 0; `UNIT_MISSING`, `UNIT_UNKNOWN`,
 * `OUT_OF_RANGE`, `UNKNOWN_FIELD`, `WRONG_TYPE`
 * @example
 * parseLength(`7' 3 5/8"`).to('in').toString() //=> '87.625'
 * parseLength('1,5 m', { decimalComma: true }).to('mm').toString() //=> '1500'
 */
export function parseLength(text: string, options?: ParseLengthOptions): Length {
  const quick = typeof text === 'string' && options === undefined ? quickLength(text) : undefined;
  if (quick !== undefined) return fromSI('length', quick.metres, quick.written);
  return readLengthText(text, options).length;
}

/**
 * Like {@link parseLength}; also flags an inch mark that was left off.
 *
 * @example
 * readLengthText(`7' 3`).impliedInches //=> true
 */
export function readLengthText(text: string, options: ParseLengthOptions = {}): LengthReading {
  const start = startOfText(text, { what: 'a length', options, checks: CHECKS });
  const sign = scanSign(text, start);
  const parts = scanParts(text, sign.end, options);
  const length = addParts(parts, sign.isNegative);
  if (length.abs().compare(FURTHEST) > 0) {
    const message = `${shown(text)} is beyond ${FURTHEST.to('km').toString()} km`;
    throw fault('OUT_OF_RANGE', message, { text: shownText(text), position: start });
  }
  return { length, impliedInches: parts.at(-1)?.isImplied === true };
}

interface Part {
  readonly amount: Amount;
  readonly unit: LengthUnit;
  readonly isImplied: boolean;
  readonly isFootMark: boolean;
  readonly end: number;
}

function addParts(parts: readonly Part[], isNegative: boolean): Length {
  const last = parts.at(-1);
  if (last === undefined) return fromUnit('length', ZERO_RATIO, 'm');
  let sum = last.amount.value;
  for (const { amount, unit } of parts.slice(0, -1)) {
    const held = (INCHES_IN[unit] ?? 1) / (INCHES_IN[last.unit] ?? 1);
    sum = addRatios(sum, multiplyRatios(amount.value, wholeRatio(held)));
  }
  const length = fromUnit('length', isNegative ? negateRatio(sum) : sum, last.unit);
  return isInFeetAndInches(parts) ? fromSI('length', exactOf(length), 'ft-in') : length;
}

/** True for a compound with inches, and for whole feet with their mark. */
function isInFeetAndInches(parts: readonly Part[]): boolean {
  const [first, second] = parts;
  if (second === undefined) return first?.isFootMark === true && first.amount.isWhole;
  return parts.at(-1)?.unit === 'in';
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
    at = nextPart(text, part, options.decimalComma);
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
  const unitAt = skipToUnit(text, amount.end);
  const word = scanUnit(text, unitAt, options);
  if (previous !== undefined) refuseTightPoint(text, previous, amount, word !== undefined);
  if (word !== undefined) {
    // inches after feet are no thousands
    if (options.decimalComma === true && previous === undefined) {
      refuseGrouping(text, amount, word.unit);
    }
    const isMark = word.unit === 'ft' && isFootMark(text, unitAt);
    return { amount, unit: word.unit, isImplied: false, isFootMark: isMark, end: word.end };
  }
  if (previous === undefined) throw missingUnit(text, unitAt);
  const isPower = isSquareOrCube(text, previous, amount);
  if (previous.unit !== 'ft' || isPower || unitAt < text.length) {
    throw unitAt < text.length && !isHyphen(text, unitAt)
      ? strayCharacter(text, unitAt)
      : readingFault('TRAILING_NUMBER', text, amount.start);
  }
  return { amount, unit: 'in', isImplied: true, isFootMark: false, end: text.length };
}

/** True for the 2 of `5 ft2` and the 3 of `5 ft3`: an area or a volume, not inches. */
const isSquareOrCube = (text: string, previous: Part, { start, end }: Amount): boolean =>
  isLetter(text, previous.end - 1) &&
  start === previous.end &&
  /^[23]$/.test(text.slice(start, end));

/** Past spaces, or past the hyphen of `4-inch`. */
const skipToUnit = (text: string, end: number): number =>
  isHyphen(text, end) && isLetter(text, end + 1) ? end + 1 : skipSpaces(text, end);

/** `6'.25` is 6.25 ft on a rod and 6 ft 0.25 in on a tape; `6 ft.5` is just as ambiguous. */
function refuseTightPoint(text: string, previous: Part, amount: Amount, hasUnit: boolean): void {
  if (amount.start !== previous.end) return;
  const isPoint = /[.,]/.test(text.charAt(amount.start));
  const isAfterPoint = !hasUnit && text[previous.end - 1] === '.';
  if (!isPoint && !isAfterPoint) return;
  const at = isPoint ? amount.start : amount.start - 1;
  throw readingFault('POINT_AFTER_UNIT', text, at);
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
    const word = text.slice(at, end);
    throw /^x$/i.test(word) ? readingFault('PRODUCT', text, at) : unitUnknown('length', word, at);
  }
  if (unit === 'wrong-case') throw readingFault('CASE', text, at);
  if (unit === 'ft-us' && options.surveyFoot !== true) throw readingFault('SURVEY_FOOT', text, at);
  end = tail;
  if (text[end] === '.') end += 1;
  return { unit, end };
}

/** End of `us-ft`, `us ft` or `ft-us`, if the current word is `us` or `ft`. */
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

/** Start of the next part, past spaces or a hyphen; the end of the text if there is none. */
function nextPart(text: string, part: Part, decimalComma?: boolean): number {
  const next = skipSpaces(text, part.end);
  if (next === text.length) return next;
  if (!isHyphen(text, next)) return next;
  if (isHyphen(text, next + 1)) throw readingFault('DOUBLE_HYPHEN', text, next + 1);
  const after = skipSpaces(text, next + 1);
  if (!startsAmount(text, after, decimalComma)) {
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
  const whole = wholeRatio(larger / smaller);
  if (compareRatios(part.amount.value, whole) >= 0) throw readingFault('MINOR_OVERFLOW', text, at);
}

const isSurvey = (a: Part, b: Part): boolean => a.unit === 'ft-us' || b.unit === 'ft-us';

function missingUnit(text: string, at: number) {
  if (at === text.length) return unitMissing('length', text, at);
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
  if (lengthWord(word) === undefined) return unitUnknown('length', word, at);
  return readingFault(previous === undefined ? 'NO_NUMBER' : 'UNIT_RUN', text, at);
}

/** The reason for a character that cannot be where it is. */
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
