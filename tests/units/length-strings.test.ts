import { describe, expect, test } from 'vitest';
import { length, parseLength, readLengthText, type LengthUnit } from 'settline/units';
import { expectFault, expectFaultOrReason, expectReason, faultsOf } from '../faults.js';
import type { ErrorCode } from 'settline';
import table from '../reference/length-strings.json' with { type: 'json' };

describe('lengths as people write them', () => {
  test.each(table.accepted)(
    'reads $input ($form)',
    ({ input, num, den, surveyFoot, decimalComma }) => {
      const read = parseLength(input, { surveyFoot, decimalComma });
      expect(read.equals(length(`${num}/${den}`, 'm'))).toBe(true);
    },
  );

  test.each(table.rejected)('refuses $input ($because)', ({ input, code, reason, ...options }) => {
    const { surveyFoot, decimalComma } = options;
    const read = () => parseLength(input, { surveyFoot, decimalComma });
    const issue = expectFault(read, code as ErrorCode);
    expect(issue.params['reason'] ?? null).toBe(reason);
    const position = issue.params['position'];
    expect(position).toBeGreaterThanOrEqual(0);
    expect(position).toBeLessThanOrEqual(input.length);
    if (reason !== null) expect(issue.message).toContain(`character ${Number(position) + 1}`);
  });

  test('the table is whole', () => {
    expect(table.accepted).toHaveLength(75);
    expect(table.rejected).toHaveLength(89);
  });
});

describe('where a fault stands', () => {
  test.each([
    [`5' 6 9/8"`, 'IMPROPER_MIXED', 5],
    [`5' 6 1/0"`, 'ZERO_DENOMINATOR', 7],
    ['12.5.6 ft', 'TWO_POINTS', 4],
    [`5' 13"`, 'MINOR_OVERFLOW', 3],
    ['1 yd 3 ft', 'MINOR_OVERFLOW', 5],
    ['5 m x', 'PRODUCT', 4],
    ['5 m m', 'UNIT_RUN', 4],
    ['5 ft2', 'TRAILING_NUMBER', 4],
    ['5ft3', 'TRAILING_NUMBER', 3],
    ['5 ft6', undefined, 0],
    ['5 ft 3', undefined, 0],
    ['6-"', 'DANGLING_HYPHEN', 1],
    [`6'.25`, 'POINT_AFTER_UNIT', 2],
    ['6 ft.5', 'POINT_AFTER_UNIT', 4],
    [`5' 11/2"`, 'IMPROPER_FRACTION', 3],
    ['3e-9 m', undefined, 0],
    ['3e9 m', 'EXPONENT', 1],
    ['0.4e-9 m', 'EXPONENT', 3],
    ['1 yd 2', 'TRAILING_NUMBER', 5],
    ['5 ft 3 kg', 'UNIT_UNKNOWN', 7],
    [`5' , 3"`, 'COMMA', 3],
    ['5. ft', 'TRAILING_POINT', 1],
    ['5 ft .', 'TRAILING_POINT', 5],
    ['5 ³ ft', 'SUPERSCRIPT', 2],
    ['⁷ in', 'SUPERSCRIPT', 0],
    ['⁷⁄ in', 'MALFORMED_FRACTION', 1],
    ['1/2/4 in', 'MALFORMED_FRACTION', 1],
    ['1/ in', 'MALFORMED_FRACTION', 1],
    ['½½ in', 'TWO_NUMBERS', 1],
    ['+', 'NO_NUMBER', 1],
    ['5 ft\u200b', 'HIDDEN_CHARACTER', 4],
    ['1.5 m ', undefined, 0],
    ['100 us-ft 6 in', 'SURVEY_FOOT', 4],
  ] as const)('%s', (text, code, position) => {
    if (code === undefined) {
      expect(parseLength(text).dimension).toBe('length');
      return;
    }
    const issue = expectFaultOrReason(() => parseLength(text), code);
    expect(issue.params['position']).toBe(position);
  });
});

describe('the edges of the grammar', () => {
  test.each([
    ['1 yd 2 ft 3 in', '63'],
    ['5\' 11 15/16"', '71.9375'],
    ['−6″', '-6'],
    ['  5\'6"  ', '66'],
    ['1 FT 6 IN', '18'],
    ['5\'- 6"', '66'],
    ['127/128 in', '0.9921875'],
    ['1 km', '39370.07874015748031496062992125984251969'],
  ])('%s', (text, inches) => {
    expect(parseLength(text).to('in').toString()).toBe(inches);
  });

  test('a decimal comma asks for the option, and then a point is refused', () => {
    expect(parseLength('2,54 cm', { decimalComma: true }).to('in').toString()).toBe('1');
    expectReason(() => parseLength('2.54 cm', { decimalComma: true }), 'COMMA');
    expect(parseLength(',5 m', { decimalComma: true }).to('cm').toString()).toBe('50');
  });

  test('the survey foot is named, never mixed', () => {
    const survey = parseLength('3937 us-ft', { surveyFoot: true });
    expect(survey.to('m').toString()).toBe('1200');
    expect(parseLength('1 us ft', { surveyFoot: true }).equals(length(1, 'ft-us'))).toBe(true);
    expectReason(() => parseLength('1 us-ft 6 in', { surveyFoot: true }), 'MIXED_SYSTEMS');
  });

  test.each([
    ['11/2 in', '1 1/2 or 11/2? Write 1 1/2 or 5 1/2'],
    ['113/16 in', '11 3/16 or 113/16? Write 11 3/16 or 7 1/16'],
    ['9/8 in', 'Write 1 1/8'],
    ['10/8 in', 'Write 1 2/8'],
    ['8/4 in', 'Write 2'],
    ['1e3 mm', 'or as { value, unit }'],
  ])('says what to write for %s', (text, hint) => {
    expect(faultsOf(() => parseLength(text))[0]?.message).toContain(hint);
  });

  test('says what to write for thousands with a decimal comma', () => {
    const read = () => parseLength('1,500 mm', { decimalComma: true });
    expect(faultsOf(read)[0]?.message).toContain('Write 1500 mm, or 1,5 mm');
  });

  test('every small number that JavaScript prints is read', () => {
    for (const value of [1e-7, 2.4e-16, 9.999999999999999e-8, 1.2345678901234567e-20, -3e-9]) {
      expect(parseLength(`${value} m`)).toEqual(length(value, 'm'));
    }
  });

  test('says when the inch mark was left off', () => {
    expect(readLengthText(`5' 6`).impliedInches).toBe(true);
    expect(readLengthText(`5' 6"`).impliedInches).toBe(false);
  });

  test('very long text is refused at once', () => {
    const issue = expectReason(() => parseLength('1'.repeat(1_000_000)), 'TOO_LONG');
    expect(issue.message.length).toBeLessThan(200);
  });

  test('only text is text', () => {
    for (const value of [5, null, undefined, {}, ['5 ft']]) {
      expectFault(() => parseLength(value as string), 'WRONG_TYPE');
    }
  });

  test('a long number keeps every digit', () => {
    const digits = `0.${'1234567890'.repeat(9)}`;
    expect(parseLength(`${digits} m`).toJSON()).toEqual({
      value: digits.replace(/0$/, ''),
      unit: 'm',
    });
  });

  test('map coordinates read; what is farther is a slip', () => {
    expect(parseLength('4500000 m').to('km').toString()).toBe('4500');
    expect(parseLength('100000 km').to('km').toString()).toBe('100000');
    expect(faultsOf(() => parseLength('-100000.001 km'))[0]?.code).toBe('OUT_OF_RANGE');
  });
});

test('every unit symbol of length reads as text', () => {
  const symbols: LengthUnit[] = ['mm', 'cm', 'm', 'km', 'in', 'ft', 'yd'];
  for (const unit of symbols) {
    expect(parseLength(`7 ${unit}`).to(unit).toString()).toBe('7');
  }
});
