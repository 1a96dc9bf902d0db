// Every character that a measure may have, and what is said of those that it may not.
import { describe, expect, test } from 'vitest';
import { area, length, parseLength, parseMeasure } from 'settline/units';
import { expectReason } from '../faults.js';

describe('fraction characters', () => {
  test.each([
    ['½', '1/2'],
    ['⅓', '1/3'],
    ['⅔', '2/3'],
    ['¼', '1/4'],
    ['¾', '3/4'],
    ['⅕', '1/5'],
    ['⅖', '2/5'],
    ['⅗', '3/5'],
    ['⅘', '4/5'],
    ['⅙', '1/6'],
    ['⅚', '5/6'],
    ['⅐', '1/7'],
    ['⅛', '1/8'],
    ['⅜', '3/8'],
    ['⅝', '5/8'],
    ['⅞', '7/8'],
    ['⅑', '1/9'],
    ['⅒', '1/10'],
    ['¹⁄₂', '1/2'],
    ['²⁄₃', '2/3'],
    ['³⁄₄', '3/4'],
    ['⁴⁄₅', '4/5'],
    ['⁵⁄₆', '5/6'],
    ['⁶⁄₇', '6/7'],
    ['⁷⁄₈', '7/8'],
    ['⁸⁄₉', '8/9'],
    ['⁹⁄₁₀', '9/10'],
    ['¹⁰⁄128', '10/128'],
    ['⁷/16', '7/16'],
    ['7⁄16', '7/16'],
  ])('%s is %s', (text, value) => {
    expect(length(`${text} in`).equals(length(value, 'in'))).toBe(true);
    expect(length(`${text}"`).equals(length(value, 'in'))).toBe(true);
    expect(area(`${text} ft2`).equals(area(value, 'ft2'))).toBe(true);
    const mixed = length(value, 'in').plus(length('7 ft 3 in'));
    expect(length(`7' 3 ${text}"`).equals(mixed)).toBe(true);
  });

  test.each([
    [`5' ½ ½"`, 'TWO_NUMBERS', 5],
    ['½ 5 in', 'TWO_NUMBERS', 2],
    ['5 ½ 5 in', 'TWO_NUMBERS', 4],
    ['½5 in', 'TWO_NUMBERS', 1],
    ['5.5½ in', 'DECIMAL_AND_FRACTION', 3],
    ['5 -½ in', 'HYPHEN_SIGN', 2],
    ['5- ½ in', 'HYPHEN_SIGN', 1],
    ['5--½ in', 'DOUBLE_HYPHEN', 2],
    ['⁷₁₆ in', 'SUPERSCRIPT', 0],
    ['⁷⁄₀ in', 'ZERO_DENOMINATOR', 2],
    ['⁷⁄₁₂₉ in', 'DENOMINATOR', 2],
    ['1/129 in', 'DENOMINATOR', 2],
    ['5 ⁹⁄₈ in', 'IMPROPER_MIXED', 2],
    ['5 8/8 in', 'IMPROPER_MIXED', 2],
    ['8/8 in', 'IMPROPER_FRACTION', 0],
  ] as const)('%s', (text, reason, position) => {
    expect(expectReason(() => length(text), reason).params['position']).toBe(position);
  });
});

test.each([' ', '\t', '\n', '\r', '\u00a0', '\u2002', '\u2003', '\u2009', '\u200a', '\u202f'])(
  'white space %j',
  (space) => {
    expect(length(`${space}7${space}ft${space}3${space}in${space}`).to('in').toString()).toBe('87');
    expect(length(`7${space}1/2${space}in`).to('in').toString()).toBe('7.5');
    expect(area(`${space}7${space}sq${space}ft${space}`).to('ft2').toString()).toBe('7');
    expectReason(() => length(`-${space}7 in`), 'SIGN_SPACE');
    expectReason(() => area(`-${space}7 ft2`), 'SIGN_SPACE');
    expectReason(() => length(`+${space}7 in`), 'SIGN_SPACE');
  },
);

test.each(['-', '\u2010', '\u2011', '\u2012', '\u2013', '\u2212'])('hyphen %s', (hyphen) => {
  expect(length(`${hyphen}7 in`).to('in').toString()).toBe('-7');
  expect(area(`${hyphen}7 ft2`).to('ft2').toString()).toBe('-7');
  expect(length(`7'${hyphen}3"`).to('in').toString()).toBe('87');
  expect(length(`7 ft ${hyphen} 3 in`).to('in').toString()).toBe('87');
  expect(length(`7${hyphen}1/2 in`).to('in').toString()).toBe('7.5');
  expect(length(`7${hyphen}inch`).to('in').toString()).toBe('7');
  for (const [text, reason, position] of [
    [`7${hyphen}3 in`, 'RANGE', 1],
    [`7' ${hyphen}3"`, 'HYPHEN_SIGN', 3],
    [`7'${hyphen}${hyphen}3"`, 'DOUBLE_HYPHEN', 3],
    [`7'${hyphen}`, 'DANGLING_HYPHEN', 2],
    [`7' ${hyphen} x`, 'DANGLING_HYPHEN', 3],
    [`${hyphen}${hyphen}7 in`, 'SIGN_RUN', 1],
    [`${hyphen}+7 in`, 'SIGN_RUN', 1],
    [`+${hyphen}7 in`, 'SIGN_RUN', 1],
    [`++7 in`, 'SIGN_RUN', 1],
    [`7${hyphen}`, 'DANGLING_HYPHEN', 1],
    [hyphen, 'NO_NUMBER', 1],
  ] as const)
    expect(expectReason(() => length(text), reason).params['position'], text).toBe(position);
});

test('a plus sign is taken', () => {
  expect(length('+7 ft 3 in').to('in').toString()).toBe('87');
  expect(area('+7 ft2').to('ft2').toString()).toBe('7');
});

describe('what does not belong in a measure', () => {
  test.each([
    ...['~', '≈', '≤', '≥', '<', '>', '±', '='].map((one) => [one, 'QUALIFIER'] as const),
    ...['⁰', '¹', '²', '³', '⁴', '⁵', '⁶', '⁷', '⁸', '⁹'].map(
      (one) => [one, 'SUPERSCRIPT'] as const,
    ),
    ...['/', '⁄'].map((one) => [one, 'RATE'] as const),
    ...['×', '*'].map((one) => [one, 'PRODUCT'] as const),
    ...['٣', '५', '５', '𝟓'].map((one) => [one, 'NON_ASCII_DIGIT'] as const),
    ...['(', '!', '&', '¡', '®', '\u2027', '\u206a', 'é', '{', '`', '@', '['].map(
      (one) => [one, 'BAD_CHARACTER'] as const,
    ),
    [':', 'RATIO'],
    [',', 'COMMA'],
    ['.', 'TRAILING_POINT'],
  ] as const)('%j after a length: %s', (character, reason) => {
    const issue = expectReason(() => parseLength(`5 ft ${character}`), reason);
    expect(issue.params['position']).toBe(5);
  });

  test.each([
    ...['\u0000', '\u0008', '\u000b', '\u001f', '\u007f', '\u009f', '\u00ad', '\u180e'],
    ...['\u200b', '\u200f', '\u2028', '\u202e', '\u2060', '\u2069', '\ufeff'],
  ])('%j after a length cannot be seen', (character) => {
    const issue = expectReason(() => parseLength(`5 ft${character}`), 'HIDDEN_CHARACTER');
    expect(issue.params['position']).toBe(4);
  });

  test.each([
    ['~5 ft', 'QUALIFIER', 0],
    ['(5 ft)', 'BAD_CHARACTER', 0],
    ['5 ~ ft', 'QUALIFIER', 2],
    ['5:50', 'RATIO', 1],
    ['5 * 6 ft', 'PRODUCT', 2],
    ['5 ft x 6 ft', 'PRODUCT', 5],
    ['5 x 6 ft', 'PRODUCT', 2],
    ['5 X 6 ft', 'PRODUCT', 2],
    ['5 ft 6 × 7 in', 'PRODUCT', 7],
    [`5' "`, 'UNIT_RUN', 3],
    ['5 ft in', 'UNIT_RUN', 5],
    [`5 m '`, 'UNIT_RUN', 4],
    [`"5`, 'NO_NUMBER', 0],
    [`'5`, 'NO_NUMBER', 0],
    [`5"'`, 'UNIT_RUN', 2],
    [`5'''`, 'UNIT_RUN', 3],
    [`5""`, 'MARK_RUN', 2],
    [`5'"`, 'UNIT_RUN', 2],
    [`5'' '`, 'UNIT_RUN', 4],
    ['feet 5', 'NO_NUMBER', 0],
  ] as const)('%s', (text, reason, position) => {
    expect(expectReason(() => parseLength(text), reason).params['position']).toBe(position);
  });

  test.each([
    ['5 ft2 3', 'UNIT_UNKNOWN'],
    ['5 ft2, 3 ft2', 'UNIT_UNKNOWN'],
  ])('an area is one number and one unit: %s', (text, code) => {
    expect(() => parseMeasure('area', text)).toThrow(expect.objectContaining({ code }));
  });
});

describe('a text is no longer than 120 characters', () => {
  test('which are taken', () => {
    expect(
      parseLength(`${'0'.repeat(117)}5 m`)
        .to('m')
        .toString(),
    ).toBe('5');
    expect(parseLength('5 m'.padEnd(120)).to('m').toString()).toBe('5');
    expect(parseMeasure('area', '5 m2'.padEnd(120)).to('m2').toString()).toBe('5');
  });

  test('one more is refused', () => {
    for (const read of [
      () => parseLength(`${'0'.repeat(118)}5 m`),
      () => parseMeasure('area', `${'0'.repeat(117)}5 m2`),
    ])
      expect(expectReason(read, 'TOO_LONG').params['position']).toBe(120);
  });

  test('of blanks alone it is empty', () => {
    expect(expectReason(() => parseLength(' '), 'EMPTY').params['position']).toBe(0);
  });
});
