import type { LengthUnit } from './catalogue.js';
import { isFootMark, isInchMark, isLetter, tapeGlyph } from './characters.js';
import { lengthWord } from './length-words.js';
import type { LengthForm } from './quantity-types.js';
import { smallDecimal, type SmallDecimal } from './small-decimal.js';

/** A length from the quick reader: metres, and how they were written. Internal. */
export interface QuickReading {
  /** The exact length in metres. */
  readonly metres: SmallDecimal;
  /** The unit in the text, or feet and inches. */
  readonly written: LengthForm;
}

/** An inch is 128 parts of 0.000 198 437 5 m, exactly: every mark of a tape is a whole number of them. */
const PARTS = 128;
const PART = { n: 1_984_375, d: 10_000_000_000 } as const;
/** Units in tenths of a millimetre. */
const SIZES: Partial<Record<LengthUnit, number>> = {
  mm: 10,
  cm: 100,
  m: 10_000,
  in: 254,
  ft: 3048,
  yd: 9144,
};
const INCH = 254;
const METRE = 10_000;

/** The position in the text, and the last amount read: `n / d`, d a power of ten or 128. */
interface Scan {
  readonly text: string;
  at: number;
  n: number;
  d: number;
}

const SPACE = 32;
const HYPHEN = 45;
const POINT = 46;
const SLASH = 47;
const NO_BREAK_SPACE = 160;
const MINUS = 0x2212;
/** Digits before and after the point that floats hold in any unit. */
const MOST_DIGITS = 6;

/**
 * Reads the commonest lengths in one pass: tapes, drawings, phones, and plain numbers with their
 * unit (`7' 3 5/8"`, `7'-3 5/8"`, `7′ 3⅝″`, `87-5/8"`, `7 feet 3 inches`, `2.226 m`). Returns
 * undefined for everything else, faults included, and leaves it to the full reader. A property test
 * checks that both readers agree. Internal.
 */
export function quickLength(text: string): QuickReading | undefined {
  const first = text.charCodeAt(0);
  const isNegative = first === HYPHEN || first === MINUS;
  const scan: Scan = { text, at: isNegative ? 1 : 0, n: 0, d: 1 };
  if (!scanAmount(scan)) return undefined;
  const unit = scanUnit(scan);
  if (scan.at < text.length) return unit === 'ft' ? withInches(scan, isNegative) : undefined;
  const size = unit === undefined ? undefined : SIZES[unit];
  if (unit === undefined || size === undefined) return undefined;
  if (scan.d === PARTS) return tapeReading(scan.n, unit, isNegative);
  const isMarked = scan.d === 1 && isFootMark(text, text.length - 1);
  return reading(scan.n * size, scan.d * METRE, isNegative, isMarked ? 'ft-in' : unit);
}

/** Parts of an inch or of a foot alone. */
function tapeReading(n: number, unit: LengthUnit, isNegative: boolean): QuickReading | undefined {
  if (unit === 'in') return reading(n * PART.n, PART.d, isNegative, 'in');
  return unit === 'ft' ? reading(n * 12 * PART.n, PART.d, isNegative, 'ft') : undefined;
}

/** The inches after whole feet. */
function withInches(scan: Scan, isNegative: boolean): QuickReading | undefined {
  const { n: feet, d: of } = scan;
  // a point right after the unit can be read two ways
  if (of !== 1 || scan.text.charCodeAt(scan.at) === POINT) return undefined;
  if (!skipJoint(scan) || !scanAmount(scan)) return undefined;
  const { n, d } = scan;
  if (n >= 12 * d || scanUnit(scan) !== 'in' || scan.at < scan.text.length) return undefined;
  const inches = feet * 12 * d + n;
  return d === PARTS
    ? reading(inches * PART.n, PART.d, isNegative, 'ft-in')
    : reading(inches * INCH, d * METRE, isNegative, 'ft-in');
}

function reading(
  n: number,
  d: number,
  isNegative: boolean,
  written: LengthForm,
): QuickReading | undefined {
  if (n > Number.MAX_SAFE_INTEGER) return undefined;
  return { metres: smallDecimal(isNegative && n !== 0 ? -n : n, d), written };
}

/** Reads a whole number, decimals, a fraction or a mixed number of a tape. */
function scanAmount(scan: Scan): boolean {
  const { text } = scan;
  const start = scan.at;
  const whole = scanWhole(scan);
  scan.n = whole;
  scan.d = 1;
  if (scan.at > start + MOST_DIGITS) return false;
  const code = text.charCodeAt(scan.at);
  if (code === POINT) return scanDecimals(scan, whole);
  if (code > 127) {
    const parts = tapeGlyph(code);
    if (parts !== undefined) return takeParts(scan, scan.at + 1, whole * PARTS + parts);
  }
  if (scan.at === start) return false;
  if (code === SLASH) return scanFraction(scan, start, 0);
  if (code !== SPACE && code !== HYPHEN) return true;
  const next = text.charCodeAt(scan.at + 1);
  if (next >= 48 && next <= 57) return scanFraction(scan, scan.at + 1, whole);
  const parts = next > 127 ? tapeGlyph(next) : undefined;
  return parts === undefined || takeParts(scan, scan.at + 2, whole * PARTS + parts);
}

function takeParts(scan: Scan, end: number, parts: number): boolean {
  scan.at = end;
  scan.n = parts;
  scan.d = PARTS;
  return true;
}

/** Digits as a whole number; the position moves past them. */
function scanWhole(scan: Scan): number {
  const { text } = scan;
  let value = 0;
  let at = scan.at;
  for (; ; at += 1) {
    const digit = text.charCodeAt(at) - 48;
    if (!(digit >= 0 && digit <= 9)) break;
    value = value * 10 + digit;
  }
  scan.at = at;
  return value;
}

function scanDecimals(scan: Scan, whole: number): boolean {
  scan.at += 1;
  const start = scan.at;
  const part = scanWhole(scan);
  const places = scan.at - start;
  if (places === 0 || places > MOST_DIGITS) return false;
  scan.d = POWERS[places] ?? 1;
  scan.n = whole * scan.d + part;
  return true;
}

const POWERS = [1, 10, 100, 1000, 10_000, 100_000, 1_000_000] as const;

/** A proper fraction that a tape has, after a whole number or alone. */
function scanFraction(scan: Scan, start: number, whole: number): boolean {
  scan.at = start;
  const upper = scanWhole(scan);
  if (scan.text.charCodeAt(scan.at) !== SLASH) return false;
  scan.at += 1;
  const lowerAt = scan.at;
  const lower = scanWhole(scan);
  if (scan.at === lowerAt || PARTS % lower !== 0 || upper >= lower) return false;
  return takeParts(scan, scan.at, whole * PARTS + upper * (PARTS / lower));
}

/** The unit after an amount, as a mark or a word, with or without a space. */
function scanUnit(scan: Scan): LengthUnit | undefined {
  const { text } = scan;
  // a hyphen comes before a word, as in 4-inch
  const isHyphened = text.charCodeAt(scan.at) === HYPHEN;
  if (isHyphened) scan.at += 1;
  else skipSpace(scan);
  const start = scan.at;
  if (isHyphened && !isLetter(text, start)) return undefined;
  if (isInchMark(text, start)) {
    scan.at += 1;
    return 'in';
  }
  if (isFootMark(text, start)) {
    scan.at += 1;
    // two foot marks are an inch mark
    return isFootMark(text, start + 1) ? undefined : 'ft';
  }
  let end = start;
  for (let code = text.charCodeAt(end) | 32; code >= 97 && code <= 122;) {
    end += 1;
    code = text.charCodeAt(end) | 32;
  }
  const word = shortUnit(text, start, end) ?? lengthWord(text.slice(start, end));
  scan.at = text.charCodeAt(end) === POINT ? end + 1 : end;
  return word === 'wrong-case' ? undefined : word;
}

/** The commonest abbreviations, without cutting the text. */
function shortUnit(text: string, start: number, end: number): LengthUnit | undefined {
  if (end > start + 2) return undefined;
  switch (text.charCodeAt(start) * 256 + (end === start + 1 ? 0 : text.charCodeAt(start + 1))) {
    case 0x6674:
      return 'ft';
    case 0x696e:
      return 'in';
    case 0x6d6d:
      return 'mm';
    case 0x636d:
      return 'cm';
    case 0x6d00:
      return 'm';
    default:
      return undefined;
  }
}

function skipSpace(scan: Scan): boolean {
  const code = scan.text.charCodeAt(scan.at);
  if (code !== SPACE && code !== NO_BREAK_SPACE) return false;
  scan.at += 1;
  return true;
}

/** No gap, a space or a hyphen between feet and inches; a hyphen after a space may be a sign. */
function skipJoint(scan: Scan): boolean {
  const isApart = skipSpace(scan);
  if (scan.text.charCodeAt(scan.at) !== HYPHEN) return true;
  scan.at += 1;
  return skipSpace(scan) || !isApart;
}
