/** Character classes of measurement text. All take UTF-16 code units. */

const FRACTION_GLYPHS: Readonly<Record<string, readonly [number, number]>> = Object.freeze({
  '½': [1, 2],
  '⅓': [1, 3],
  '⅔': [2, 3],
  '¼': [1, 4],
  '¾': [3, 4],
  '⅕': [1, 5],
  '⅖': [2, 5],
  '⅗': [3, 5],
  '⅘': [4, 5],
  '⅙': [1, 6],
  '⅚': [5, 6],
  '⅐': [1, 7],
  '⅛': [1, 8],
  '⅜': [3, 8],
  '⅝': [5, 8],
  '⅞': [7, 8],
  '⅑': [1, 9],
  '⅒': [1, 10],
});

/** A fraction character that a tape has, in 128ths; undefined for any other character. Internal. */
export const tapeGlyph = (code: number): number | undefined => TAPE_GLYPHS.get(code);

const TAPE_GLYPHS: ReadonlyMap<number, number> = new Map(
  Object.entries(FRACTION_GLYPHS)
    .filter(([, [, d]]) => 128 % d === 0)
    .map(([glyph, [n, d]]) => [glyph.charCodeAt(0), n * (128 / d)]),
);

const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const SUBSCRIPTS = '₀₁₂₃₄₅₆₇₈₉';
const SPACES = ' \t\n\r\u00a0\u2002\u2003\u2009\u200a\u202f';
const HIDDEN =
  /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u00ad\u180e\u200b-\u200f\u2028-\u202e\u2060-\u2069\ufeff]/;
const OTHER_DIGIT = /\p{Nd}/u;
const HYPHENS = '-\u2010\u2011\u2012\u2013\u2212';
const SLASHES = '/\u2044';
const QUALIFIERS = '~≈≤≥<>±=';

/** Value of an ASCII digit, or -1. */
export function digit(text: string, at: number): number {
  const value = text.charCodeAt(at) - 48;
  return value >= 0 && value <= 9 ? value : -1;
}

export const fractionGlyph = (text: string, at: number): readonly [number, number] | undefined =>
  text.charCodeAt(at) < 0x80 ? undefined : FRACTION_GLYPHS[text.charAt(at)];

export const superscript = (text: string, at: number): number => indexIn(SUPERSCRIPTS, text, at);
export const subscript = (text: string, at: number): number => indexIn(SUBSCRIPTS, text, at);
export const isSpace = (text: string, at: number): boolean => indexIn(SPACES, text, at) >= 0;
/** `'`, a prime, a curly quote, an acute accent or a modifier prime. */
export function isFootMark(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  if (code < 0x80) return code === 0x27;
  if (code < 0x2000) return code === 0xb4 || code === 0x2b9;
  return code === 0x2032 || code === 0x2019 || code === 0x2018;
}

/** `"`, a double prime, a curly double quote or a modifier double prime. */
export function isInchMark(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  if (code < 0x80) return code === 0x22;
  return code === 0x2033 || code === 0x201d || code === 0x201c || code === 0x2ba;
}
export const isHyphen = (text: string, at: number): boolean => indexIn(HYPHENS, text, at) >= 0;
export const isSlash = (text: string, at: number): boolean => indexIn(SLASHES, text, at) >= 0;
export const isQualifier = (text: string, at: number): boolean =>
  indexIn(QUALIFIERS, text, at) >= 0;
export const isHidden = (text: string, at: number): boolean => HIDDEN.test(text.charAt(at));

/** True for a digit of a script other than plain ASCII. */
export function isForeignDigit(text: string, at: number): boolean {
  const point = text.codePointAt(at);
  return point !== undefined && point > 127 && OTHER_DIGIT.test(String.fromCodePoint(point));
}

/** True for a plain Latin letter. */
export function isLetter(text: string, at: number): boolean {
  const lower = text.charCodeAt(at) | 32;
  return lower >= 97 && lower <= 122;
}

/** Position after white space, if any. */
export function skipSpaces(text: string, at: number): number {
  let next = at;
  while (isSpace(text, next)) next += 1;
  return next;
}

function indexIn(set: string, text: string, at: number): number {
  return at < text.length ? set.indexOf(text.charAt(at)) : -1;
}
