// How the parts of a length and the sides of a slope may stand, and where a fault is said to be.
import { describe, expect, test } from 'vitest';
import { length, parseLength, parseSlope, readLengthText, slope } from 'settline/units';
import { expectFaultOrReason } from '../faults.js';
import { quickLength } from '../../src/units/quick-length.js';

describe('parts of a length', () => {
  test.each([
    ['1 mi 2 yd 2 ft 3 in', 63_360 + 72 + 27],
    ['1 mi 20 in', 63_380],
    ['1 mi 1759 yd', 63_360 + 63_324],
    ['1 mi 5279 ft', 63_360 + 63_348],
    ['1 mi 63359 in', 126_719],
    ['1 yd 2 ft', 60],
    ['1 yd 35 in', 71],
    ['1 yd 2 1/2 ft', 66],
    [`1 yd 2' 3`, 63],
    ['5 ft 6', 66],
    ['5ft6', 66],
    [`5'2`, 62],
    [`5'3`, 63],
    ['5 ft 2', 62],
    ['5ft 3', 63],
    [`5 ft 1/2`, 60.5],
    [`5 ft ½`, 60.5],
    [`5'11 127/128"`, 71.9921875],
    ['-5 ft 6 in', -66],
    ['+5 ft 6 in', 66],
    ['5 ft. 6 in.', 66],
    ['5 ft.6 in', 66],
    ['5 ft .5 in', 60.5],
    [`5' .5"`, 60.5],
    ['5 ft-6', 66],
    ['5 ft - 6', 66],
    ['5-ft 6-in', 66],
    ['5 ft 6-1/2 in', 66.5],
  ])('%s', (text, inches) => {
    const read = parseLength(text);
    expect(read.toNumber('in')).toBe(inches);
    expect(readLengthText(text).length).toEqual(read);
  });

  test.each([
    ['1 mi 1760 yd', 'MINOR_OVERFLOW', 5],
    ['1 yd 3 ft', 'MINOR_OVERFLOW', 5],
    ['1 yd 36 in', 'MINOR_OVERFLOW', 5],
    ['5 ft 12 in', 'MINOR_OVERFLOW', 5],
    ['5ft22', 'MINOR_OVERFLOW', 3],
    ['5ft2', 'TRAILING_NUMBER', 3],
    ['5 yd2', 'TRAILING_NUMBER', 4],
    ['5 m3', 'TRAILING_NUMBER', 3],
    ['5 in 3', 'TRAILING_NUMBER', 5],
    ['5 ft 6 -', 'TRAILING_NUMBER', 5],
    ['5 ft 6 in 3', 'TRAILING_NUMBER', 10],
    ['5 ft 6 %', 'BAD_CHARACTER', 7],
    ['1 ft 1 yd', 'UNIT_ORDER', 5],
    ['1 in 1 mi', 'UNIT_ORDER', 5],
    ['1 yd 2 yd', 'REPEATED_UNIT', 5],
    ['1.5 yd 2 ft', 'FRACTIONAL_MAJOR', 0],
    ['1 yd 1.5 ft 2 in', 'FRACTIONAL_MAJOR', 5],
    ['1 m 2 cm', 'MIXED_METRIC', 4],
    ['1 m 1 m', 'MIXED_METRIC', 4],
    ['1 ft 2 cm', 'MIXED_SYSTEMS', 5],
    ['1 cm 2 ft', 'MIXED_SYSTEMS', 5],
    ['1 us-ft 2 cm', 'MIXED_SYSTEMS', 8],
    ['1 cm 2 us-ft', 'MIXED_SYSTEMS', 5],
    ['1 us-ft 2 us-ft', 'MIXED_SYSTEMS', 8],
    [`6'.25`, 'POINT_AFTER_UNIT', 2],
    [`6'.25"`, 'POINT_AFTER_UNIT', 2],
    ['6 ft.25', 'POINT_AFTER_UNIT', 4],
    ['6 ft..25 in', 'POINT_AFTER_UNIT', 5],
    ['5 ft 6. in', 'TRAILING_POINT', 6],
    ['5 1', 'TWO_NUMBERS', 2],
    ['5 ft 6 7 in', 'TWO_NUMBERS', 7],
    [`5'.`, 'TRAILING_POINT', 2],
    ['1 em', 'UNIT_UNKNOWN', 2],
    ['5', 'UNIT_MISSING', 1],
    ['5 ', 'UNIT_MISSING', 2],
    ['5 -', 'DANGLING_HYPHEN', 2],
    ['5 ft -', 'DANGLING_HYPHEN', 5],
    ['5 ft - in', 'DANGLING_HYPHEN', 5],
    ['5 ft -- 6 in', 'DOUBLE_HYPHEN', 6],
    ['5 ft -6 in', 'HYPHEN_SIGN', 5],
    ['1,5 m', 'COMMA', 1],
    ['1.5,5 m', 'COMMA', 3],
    ['1.5.5 m', 'TWO_POINTS', 3],
    ['5.-1/2 m', 'TRAILING_POINT', 1],
    ['1e5 m', 'EXPONENT', 1],
    ['1E-7 m', 'EXPONENT', 1],
    ['1e-6 m', 'EXPONENT', 1],
    ['10e-7 m', 'EXPONENT', 2],
    ['1.e-7 m', 'TRAILING_POINT', 1],
    ['1e-1000 m', 'EXPONENT', 1],
    ['1e-61 m', 'OUT_OF_RANGE', 0],
    ['-9.9e-61 m', 'OUT_OF_RANGE', 1],
    [`${'9'.repeat(16)}/128 m`, 'OUT_OF_RANGE', 0],
    ['5 /2 in', 'RATE', 2],
    ['5-/2 in', 'DANGLING_HYPHEN', 1],
    ['/2 in', 'RATE', 0],
    ['1/2/2 m', 'MALFORMED_FRACTION', 1],
    ['1/2.5 m', 'MALFORMED_FRACTION', 1],
    ['1/-2 m', 'MALFORMED_FRACTION', 1],
    ['5 1/2/2 m', 'MALFORMED_FRACTION', 3],
    ['1/2 3 m', 'TWO_NUMBERS', 4],
    ['5 1/2 ½ m', 'TWO_NUMBERS', 6],
    ['x', 'PRODUCT', 0],
    ['5 xx', 'UNIT_UNKNOWN', 2],
    ['xx 5', 'UNIT_UNKNOWN', 0],
    ['5 ft xx', 'UNIT_UNKNOWN', 5],
  ] as const)('%s: %s', (text, what, position) => {
    const read = () => parseLength(text, { surveyFoot: true });
    expect(expectFaultOrReason(read, what).params['position']).toBe(position);
    // the reader without options falls back on the full one
    expect(quickLength(text)).toBeUndefined();
  });

  test.each([
    ['5 ft - ,5 in', 60.5],
    ['5 ft-,5 in', 60.5],
    ['5 ft ,5 in', 60.5],
    [`5' 6,5"`, 66.5],
    [`0' 7,444"`, 7.444],
    ['5 ft 1,500 in', 61.5],
  ])('%s, with a decimal comma', (text, inches) => {
    expect(parseLength(text, { decimalComma: true }).toNumber('in')).toBe(inches);
  });

  test.each([
    ['1e-7 m', '0.0000001'],
    ['1.5e-7 m', '0.00000015'],
    ['1e-60 m', `0.${'0'.repeat(59)}1`],
    ['9.99e-10 m', '0.000000000999'],
    ['0 m', '0'],
    ['0.0 m', '0'],
    ['0/2 m', '0'],
    ['-0 m', '0'],
  ])('%s', (text, metres) => {
    expect(parseLength(text).to('m').toString()).toBe(metres);
  });

  test.each([
    [`5' 6`, true],
    ['5 ft 6 1/2', true],
    [`5' 6"`, false],
    [`5'`, false],
    ['5 ft 6 in', false],
    ['0 in', false],
  ])('%s: the inch mark is left off: %s', (text, impliedInches) => {
    expect(readLengthText(text).impliedInches).toBe(impliedInches);
  });
});

describe('a length prints as it was written', () => {
  test.each([
    [`7'`, `7' 0"`],
    [`7’`, `7' 0"`],
    ['7 ft', '7 ft'],
    [`7.5'`, '7.5 ft'],
    [`7 1/2'`, '7.5 ft'],
    [`½'`, '0.5 ft'],
    [`7' 3"`, `7' 3"`],
    ['7 ft 3 in', `7' 3"`],
    ['7 ft 3', `7' 3"`],
    ['1 yd 3 in', `3' 3"`],
    ['1 yd 2 ft', '5 ft'],
    ['1 mi 1 yd', '1761 yd'],
    [`-7' 3"`, `-7' 3"`],
    [`-7'`, `-7' 0"`],
    [`7' 3.3"`, '87.3 in'],
    [`7' 3.5"`, `7' 3 1/2"`],
    ['87"', '87 in'],
    [`7''`, '7 in'],
    ['3 km', '3 km'],
  ])('%s: %s', (text, printed) => {
    expect(parseLength(text).toString()).toBe(printed);
    expect(readLengthText(text).length.toString()).toBe(printed);
    const doubled = parseLength(text).plus(length('1 m')).minus(length('1 m'));
    expect(doubled.toString()).toBe(printed);
  });
});

describe('a slope', () => {
  test.each([
    ['1:48', '1/48'],
    ['48:1', '1/48'],
    ['1 :48', '1/48'],
    ['1: 48 ', '1/48'],
    ['1.0:48', '1/48'],
    ['1:1 1/2', '2/3'],
    ['+1:48', '1/48'],
    ['-48:1', '-1/48'],
    ['1 in 48', '1/48'],
    ['1 IN 48', '1/48'],
    ['-1 in 48', '-1/48'],
    ['1 per 48', '1/48'],
    ['1 in 12 ft', '1/144'],
    [`1 in 12'`, '1/144'],
    ['1 in 144"', '1/144'],
    ['1 in 12 yd', '1/432'],
    [`1" in 12 ft`, '1/144'],
    [`1'' in 12 ft`, '1/144'],
    ['1 in in 12 ft', '1/144'],
    ['1 in per 12 ft', '1/144'],
    ['1 in per foot', '1/12'],
    ['1 in per ft.', '1/12'],
    ['1 in PER ft', '1/12'],
    ['1 in/foot', '1/12'],
    ['1/4 in/ft', '1/48'],
    ['1/4 in / 1 ft', '1/48'],
    [`1/4"/1'`, '1/48'],
    ['1 ft 6 in per 100 ft', '0.015'],
    [`1' 6" in 100 ft`, '0.015'],
    ['-1/4 in per ft', '-1/48'],
    ['20 mm/m', '0.02'],
    ['20 mm in 1 m', '0.02'],
    ['2 cm per metre', '0.02'],
    ['1 m/m', '1'],
    ['0 mm/m', '0'],
    ['½%', '0.005'],
    ['1/2 %', '0.005'],
    ['2 1/2%', '0.025'],
    ['2 PERCENT', '0.02'],
  ])('%s', (text, ratio) => {
    expect(parseSlope(text).equals(slope(ratio, 'ratio'))).toBe(true);
  });

  test.each([
    ['2,5%', '0.025'],
    ['1:2,5', '0.4'],
    ['2,5:1', '0.4'],
    ['1 in 2,5', '0.4'],
    ['2,5 mm/m', '0.0025'],
    ['1 in per 2,5 ft', '1/30'],
    ['1 in per ,5 ft', '1/6'],
    ['1 in ,5 ft', '1/6'],
    ['6 in in ,5 ft', '1'],
  ])('%s, with a decimal comma', (text, ratio) => {
    const read = parseSlope(text, { decimalComma: true });
    expect(read.equals(slope(ratio, 'ratio'))).toBe(true);
  });

  test('of an angle, with a decimal comma', () => {
    const read = parseSlope('1,5 deg', { decimalComma: true });
    expect(read.to('percent').toFixed(6)).toBe('2.618592');
  });

  test.each([
    ['2 ', 'UNIT_MISSING', 2],
    ['+', 'NO_NUMBER', 1],
    ['- 2%', 'SIGN_SPACE', 1],
    ['1:', 'NO_NUMBER', 2],
    ['1:x', 'NO_NUMBER', 2],
    ['1:48 x', 'BAD_CHARACTER', 4],
    ['1:48%', 'BAD_CHARACTER', 4],
    ['1 in 48 :', 'BAD_CHARACTER', 7],
    ['3:4', 'SLOPE_AMBIGUOUS', 1],
    ['3 in 4', 'SLOPE_AMBIGUOUS', 5],
    ['10 in 1', 'RATIO_BELOW_ONE', 6],
    ['1:0.5', 'RATIO_BELOW_ONE', 1],
    ['0.5:1', 'RATIO_BELOW_ONE', 3],
    ['1 in 0.5', 'RATIO_BELOW_ONE', 5],
    ['1:0', 'ZERO_DENOMINATOR', 1],
    ['0:1', 'ZERO_DENOMINATOR', 1],
    ['0:5', 'ZERO_DENOMINATOR', 1],
    ['5:0', 'ZERO_DENOMINATOR', 1],
    ['1 in per 0 ft', 'ZERO_DENOMINATOR', 9],
    ['1 in 12 m', 'SLOPE_AMBIGUOUS', 5],
    ['1 in 12 mm', 'SLOPE_AMBIGUOUS', 5],
    ['1 in 12 metres', 'SLOPE_AMBIGUOUS', 5],
    ['1 in 12 meter.', 'SLOPE_AMBIGUOUS', 5],
    ['20 mm/M', 'CASE', 6],
    ['20 mm/x', 'UNIT_UNKNOWN', 6],
    ['20 xx/m', 'UNIT_UNKNOWN', 3],
    ['20 mm per 5 xx', 'UNIT_UNKNOWN', 12],
    ['20 mm per 5 5 m', 'TWO_NUMBERS', 12],
    ['-20 20 mm per m', 'TWO_NUMBERS', 4],
    ['2 per', 'UNIT_UNKNOWN', 2],
    ['2 perc', 'UNIT_UNKNOWN', 2],
    ['2 in', 'UNIT_UNKNOWN', 2],
    ['2 in x', 'UNIT_UNKNOWN', 2],
    ['2 ft', 'UNIT_UNKNOWN', 2],
    ['1/129 in per ft', 'DENOMINATOR', 2],
    ['1/129 %', 'DENOMINATOR', 2],
    ['1:1/129', 'DENOMINATOR', 4],
    ['1/129 in 5', 'DENOMINATOR', 2],
    ['2,5 %', 'COMMA', 1],
  ] as const)('%s: %s', (text, what, position) => {
    expect(expectFaultOrReason(() => parseSlope(text), what).params['position']).toBe(position);
  });

  test('what the inches are, with a fault in them', () => {
    const issue = expectFaultOrReason(() => parseSlope('1 1 in 12 ft'), 'TWO_NUMBERS');
    expect(issue.message).toContain('two numbers with no unit between them');
  });
});
