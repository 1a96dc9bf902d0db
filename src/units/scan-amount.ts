import { fault } from '../errors.js';
import {
  digit,
  fractionGlyph,
  isHyphen,
  isLetter,
  isSlash,
  skipSpaces,
  subscript,
  superscript,
} from './characters.js';
import {
  addRatios,
  compareRatios,
  divideRatios,
  signOfRatio,
  wholeRatio,
  type Ratio,
} from './ratio.js';
import { readWritten } from './read-number.js';
import { readingFault } from './reading-fault.js';
import { shownText } from '../shown-text.js';
import { shown } from './shown.js';

/** A number in measurement text: whole, decimal, fraction or mixed. */
export interface Amount {
  /** The exact number, without its sign. */
  readonly value: Ratio;
  /** True for a whole number. Only a whole number may be followed by a smaller unit. */
  readonly isWhole: boolean;
  /** Where it begins in the text. */
  readonly start: number;
  /** Where it ends. */
  readonly end: number;
}

/** Ways to write an amount. */
export interface AmountOptions {
  /** True for a decimal comma. Default: false. */
  readonly decimalComma?: boolean;
  /** Largest denominator accepted. */
  readonly finest: number;
}

/** True if an amount begins: a digit, a point with a digit, or a fraction glyph. */
export function startsAmount(text: string, at: number, decimalComma = false): boolean {
  if (digit(text, at) >= 0 || fractionGlyph(text, at) !== undefined || superscript(text, at) >= 0) {
    return true;
  }
  return text[at] === (decimalComma ? ',' : '.');
}

/**
 * Reads the amount that begins at `start`: `5`, `5.5`, `.5`, `1/2`, `½`, `5 1/2`, `5-1/2`, `5½`,
 * `⁷⁄₁₆`. One pass, no regular expression.
 */
export function scanAmount(text: string, start: number, options: AmountOptions): Amount {
  const leading = scanFraction(text, start, options);
  if (leading !== undefined) {
    refuseSecondNumber(text, leading.end);
    refuseImproper(text, leading);
    return { value: fractionValue(leading), isWhole: false, start, end: leading.end };
  }
  const number = scanNumber(text, start, options.decimalComma === true);
  const fraction = scanMixedPart(text, number.end, options);
  if (fraction === undefined) {
    const { isWhole, end } = number;
    const value = readWritten(number.value);
    refuseTiny(text, value, start);
    return { value, isWhole, start, end };
  }
  if (!number.isWhole) throw readingFault('DECIMAL_AND_FRACTION', text, fraction.start);
  if (fraction.n >= fraction.d) throw readingFault('IMPROPER_MIXED', text, fraction.start);
  refuseSecondNumber(text, fraction.end);
  const value = addRatios(readWritten(number.value), fractionValue(fraction));
  return { value, isWhole: false, start, end: fraction.end };
}

interface Fraction {
  readonly n: number;
  readonly d: number;
  readonly start: number;
  readonly end: number;
}

const fractionValue = ({ n, d }: Fraction): Ratio => divideRatios(wholeRatio(n), wholeRatio(d));

interface PlainNumber {
  readonly value: string;
  readonly isWhole: boolean;
  readonly end: number;
}

function scanNumber(text: string, start: number, decimalComma: boolean): PlainNumber {
  const point = decimalComma ? ',' : '.';
  let end = skipDigits(text, start);
  let value = text.slice(start, end);
  let isWhole = true;
  if (text[end] === point) {
    const decimals = end + 1;
    end = skipDigits(text, decimals);
    if (end === decimals) throw readingFault('TRAILING_POINT', text, decimals - 1);
    value += `.${text.slice(decimals, end)}`;
    isWhole = false;
  }
  if (text[end] === point) throw readingFault('TWO_POINTS', text, end);
  if (text[end] === ',' || text[end] === '.') throw readingFault('COMMA', text, end);
  const powerEnd = skipExponent(text, start, end);
  if (powerEnd === end) return { value, isWhole, end };
  return { value: text.slice(start, powerEnd), isWhole: false, end: powerEnd };
}

/**
 * The form in which JavaScript prints values below a millionth: one digit before the point, then
 * the power.
 */
const SMALL_FLOAT = /^[1-9](?:\.\d+)?e-(?:[7-9]|[1-9]\d{1,2})$/;

/** The end of a power of ten in the form that JavaScript prints; none for any other. */
function skipExponent(text: string, start: number, at: number): number {
  if (text[at] !== 'e' && text[at] !== 'E') return at;
  const signed = text[at + 1] === '-' || text[at + 1] === '+' ? at + 2 : at + 1;
  const end = skipDigits(text, signed);
  if (end === signed || SMALL_FLOAT.test(text.slice(start, end))) return end === signed ? at : end;
  const hint = 'Write the number in full, or as { value, unit }';
  throw readingFault('EXPONENT', text, at, hint);
}

/** No measure is smaller than this in any unit. */
const LEAST = readWritten('1e-60');

function refuseTiny(text: string, value: Ratio, position: number): void {
  if (signOfRatio(value) === 0 || compareRatios(value, LEAST) >= 0) return;
  const message = `${shown(text)} is too small to be a measurement`;
  throw fault('OUT_OF_RANGE', message, { text: shownText(text), position });
}

/** `11/2` may be a mistake for `1 1/2`. */
function refuseImproper(text: string, { n, d, start }: Fraction): void {
  if (n < d) return;
  const rest = n % d;
  const mixed = rest === 0 ? `${n / d}` : `${Math.floor(n / d)} ${rest}/${d}`;
  const meant = withSpace(`${n}`, d);
  const hint =
    meant === undefined ? `Write ${mixed}` : `${meant} or ${n}/${d}? Write ${meant} or ${mixed}`;
  throw readingFault('IMPROPER_FRACTION', text, start, hint);
}

/** The mixed number that was meant if a space is missing in the numerator. */
function withSpace(upper: string, d: number): string | undefined {
  for (let at = upper.length - 1; at > 0; at -= 1) {
    const part = Number(upper.slice(at));
    if (part > 0 && part < d && upper[at] !== '0') return `${upper.slice(0, at)} ${part}/${d}`;
  }
  return undefined;
}

/** The fraction of a mixed number, after spaces, a hyphen or no gap. */
function scanMixedPart(text: string, end: number, options: AmountOptions): Fraction | undefined {
  const next = skipSpaces(text, end);
  if (isHyphen(text, next)) return scanHyphenPart(text, end, next, options);
  const fraction = scanFraction(text, next, options);
  if (fraction !== undefined) return fraction;
  if (digit(text, next) >= 0) throw readingFault('TWO_NUMBERS', text, next);
  return undefined;
}

function scanHyphenPart(
  text: string,
  end: number,
  hyphen: number,
  options: AmountOptions,
): Fraction | undefined {
  if (isHyphen(text, hyphen + 1)) throw readingFault('DOUBLE_HYPHEN', text, hyphen + 1);
  const next = skipSpaces(text, hyphen + 1);
  const fraction = scanFraction(text, next, options);
  const isTight = hyphen === end && next === hyphen + 1;
  if (fraction !== undefined) {
    if (!isTight) throw readingFault('HYPHEN_SIGN', text, hyphen);
    return fraction;
  }
  if (digit(text, next) >= 0) throw readingFault('RANGE', text, hyphen);
  return undefined;
}

function scanFraction(text: string, start: number, options: AmountOptions): Fraction | undefined {
  const glyph = fractionGlyph(text, start);
  if (glyph !== undefined) return { n: glyph[0], d: glyph[1], start, end: start + 1 };
  if (superscript(text, start) >= 0) return scanRaisedFraction(text, start, options);
  const slash = skipDigits(text, start);
  if (slash === start || !isSlash(text, slash)) return undefined;
  if (isLetter(text, slash + 1)) return undefined;
  const end = skipDigits(text, slash + 1);
  if (end === slash + 1 || text[end] === '.' || isSlash(text, end)) {
    throw readingFault('MALFORMED_FRACTION', text, slash);
  }
  return checked(
    text,
    start,
    slash,
    text.slice(start, slash),
    text.slice(slash + 1, end),
    end,
    options,
  );
}

/** `⁷⁄₁₆`: raised digits, a slash, lowered or plain digits. */
function scanRaisedFraction(text: string, start: number, options: AmountOptions): Fraction {
  let at = start;
  let n = '';
  for (; superscript(text, at) >= 0; at += 1) n += `${superscript(text, at)}`;
  if (!isSlash(text, at)) throw readingFault('SUPERSCRIPT', text, start);
  const slash = at;
  let d = '';
  for (at += 1; subscript(text, at) >= 0 || digit(text, at) >= 0; at += 1) {
    d += `${Math.max(subscript(text, at), digit(text, at))}`;
  }
  if (d === '') throw readingFault('MALFORMED_FRACTION', text, slash);
  return checked(text, start, slash, n, d, at, options);
}

function checked(
  text: string,
  start: number,
  slash: number,
  upper: string,
  lower: string,
  end: number,
  options: AmountOptions,
): Fraction {
  const n = Number(upper);
  const d = Number(lower);
  if (d === 0) throw readingFault('ZERO_DENOMINATOR', text, slash + 1);
  if (d > options.finest) throw readingFault('DENOMINATOR', text, slash + 1);
  if (!Number.isSafeInteger(n)) {
    throw fault('OUT_OF_RANGE', `${shown(text)} is too large to be a measurement`, {
      position: start,
    });
  }
  return { n, d, start, end };
}

function refuseSecondNumber(text: string, end: number): void {
  const next = skipSpaces(text, end);
  if (digit(text, next) >= 0 || fractionGlyph(text, next) !== undefined) {
    throw readingFault('TWO_NUMBERS', text, next);
  }
}

function skipDigits(text: string, start: number): number {
  let at = start;
  while (digit(text, at) >= 0) at += 1;
  return at;
}
