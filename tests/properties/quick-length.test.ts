import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseLength } from 'settline/units';
import { isSettlineError } from 'settline';
import { readLengthText } from '../../src/units/parse-length.js';
import { exactOf, writtenAs } from '../../src/units/quantity.js';
import { quickLength } from '../../src/units/quick-length.js';
import table from '../reference/length-strings.json' with { type: 'json' };
import { runs } from '../runs.js';

/** Asserts that what the quick reader reads is what the full reader reads; returns whether it did. */
function agrees(text: string): boolean {
  const quick = quickLength(text);
  if (quick === undefined) return false;
  const full = readLengthText(text).length;
  expect(quick.metres, text).toEqual(exactOf(full));
  expect(quick.written, text).toBe(writtenAs(full));
  return true;
}

test('the common forms are read at once, and the same', () => {
  for (const text of [
    // tapes
    ...[`7' 3 5/8"`, `5'6 1/2"`, `5'`, `66"`, '2 3/8 in', '5/16 in', '-6"', `5' 1/2"`, `5 ' 6 "`],
    // drawings
    ...[`7'-3 5/8"`, `5'-0"`, `5' - 6"`, '87-5/8"', `5'- 6"`, '4-in', '4-inch', '5-1/2 ft'],
    // phones
    ...['7′ 3⅝″', '5’ 6½”', '5′6″', '½″', '−6″', '5´ 6"', '5ʹ 6ʺ', '5\u00a0ft 6\u00a0in', '6 ½ in'],
    // words
    ...[
      '7 feet 3 inches',
      '7 Feet 3 Inches',
      '12 FEET',
      '5 ft. 6 in.',
      '5ft6in',
      '3 yards',
      '2 metres',
    ],
    // numbers
    ...['12 ft', '12ft', '5 ft 6 in', '7 ft 3 5/8 in', '-3 ft', '1.675 m', '25.4 mm', '1500 mm'],
    ...['5.54 ft', `5.54'`, '87.625 in', '0 in', '150.5 cm', '.5 ft', `5' 6.25"`, '1 1/2 ft'],
  ]) {
    expect(agrees(text), text).toBe(true);
  }
});

test('every text of the table is read the same or left to the full reader', () => {
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
    ...[
      'FT',
      '/',
      '.',
      ',',
      '\t',
      '½',
      '⅓',
      '′',
      '″',
      '´',
      'ʺ',
      '−',
      '\u00a0',
      'inch',
      'Feet',
      'miles',
    ],
    ...['e-7', '- '],
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
    fc.tuple(number, part, part, part).map(([a, b, c, d]) => `${a}'-${b} ${c}/${d}"`),
    fc.tuple(number, part, part).map(([a, b, c]) => `${a}-${b}/${c}"`),
    fc.tuple(number, part).map(([a, b]) => `${a}′ ${b}½″`),
    fc.tuple(number, part).map(([a, b]) => `${a} feet ${b} inches`),
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
