import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseLength } from 'settline/units';
import { isSettlineError } from 'settline';
import { readLengthText } from '../../src/units/parse-length.js';
import { exactOf } from '../../src/units/quantity.js';
import { quickLength } from '../../src/units/quick-length.js';
import table from '../reference/length-strings.json' with { type: 'json' };
import { runs } from '../runs.js';

/** Asserts that what the quick reader reads is what the full reader reads; returns whether it did. */
function agrees(text: string): boolean {
  const quick = quickLength(text);
  if (quick === undefined) return false;
  const full = exactOf(readLengthText(text).length);
  expect(quick, text).toEqual(full);
  return true;
}

test('plain lengths are read at once, and alike', () => {
  for (const text of [
    `7' 3 5/8"`,
    `7'3 5/8"`,
    `5'`,
    `66"`,
    '12 ft',
    '12ft',
    '5 ft 6 in',
    '7 ft 3 5/8 in',
    '2 3/8 in',
    '5/16 in',
    '9/8"',
    '-6"',
    '-3 ft',
    '1.675 m',
    '25.4 mm',
    '1500 mm',
    '5.54 ft',
    '87.625 in',
    `5' 1/2"`,
    '0 in',
    '150.5 cm',
  ]) {
    expect(agrees(text), text).toBe(true);
  }
});

test('every text of the table is read alike or left to the full reader', () => {
  for (const { input, surveyFoot, decimalComma } of table.accepted) {
    if (!surveyFoot && !decimalComma) agrees(input);
  }
  for (const { input } of table.rejected) expect(quickLength(input), input).toBeUndefined();
});

test('pieces of lengths in any order', () => {
  const piece = fc.constantFrom(
    ...[
      '0',
      '5',
      '11',
      '12',
      '128',
      '1000000',
      '6.5',
      '.5',
      '6.',
      '1/2',
      '9/8',
      '1/3',
      '1/0',
      '3/256',
    ],
    ...["'", '"', "''", '-', '+', ' ', '  ', 'ft', 'in', 'mm', 'cm', 'm', 'yd', 'f', 'i', 'feet'],
    ...['FT', '/', '.', ',', '\t', '½'],
  );
  let read = 0;
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 6 }), (pieces) => {
      if (agrees(pieces.join(''))) read += 1;
    }),
    runs(100_000),
  );
  expect(read).toBeGreaterThan(300);
});

test('tape lengths of every kind', () => {
  const number = fc.integer({ min: 0, max: 999_999 });
  const part = fc.integer({ min: 0, max: 130 });
  const text = fc.oneof(
    fc
      .tuple(number, part, part, fc.integer({ min: 1, max: 130 }))
      .map(([a, b, c, d]) => `${a}' ${b} ${c}/${d}"`),
    fc.tuple(number, part, part, part).map(([a, b, c, d]) => `${a} ft ${b} ${c}/${d} in`),
    fc
      .tuple(number, number, fc.constantFrom('mm', 'cm', 'm', 'in', 'ft', 'yd'))
      .map(([a, b, u]) => `-${a}.${b} ${u}`),
    fc.tuple(number, part).map(([a, b]) => `${a}'${b}"`),
  );
  fc.assert(
    fc.property(text, (one) => {
      agrees(one);
      try {
        expect(parseLength(one).equals(readLengthText(one).length)).toBe(true);
      } catch (error) {
        if (!isSettlineError(error)) throw error;
      }
    }),
    runs(20_000),
  );
});
