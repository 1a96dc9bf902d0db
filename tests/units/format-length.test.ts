import { describe, expect, test } from 'vitest';
import {
  angle,
  area,
  formatLength,
  formatQuantity,
  fromNumber,
  length,
  mass,
  parseLength,
  roundTo,
  slope,
  volume,
  type FormatLengthOptions,
  type Rounding,
} from 'settline/units';
import { expectFault } from '../faults.js';

const print = (text: string, options: FormatLengthOptions) => formatLength(length(text), options);

describe('feet and inches', () => {
  test.each([
    ['87.625 in', '1/16 in', `7' 3 5/8"`],
    ['11 31/32 in', '1/16 in', `1' 0"`],
    ['11 63/64 in', '1/64 in', `0' 11 63/64"`],
    ['3.6575 m', '1/16 in', `12' 0"`],
    ['1.234 m', '1/16 in', `4' 0 9/16"`],
    ['1.2191 m', '1/16 in', `4' 0"`],
    ['-0.1 m', '1/16 in', `-0' 3 15/16"`],
    ['-12 in', '1/16 in', `-1' 0"`],
    ['0 in', '1/16 in', `0' 0"`],
    ['-1/64 in', '1/16 in', `0' 0"`],
    ['5 ft', '1 in', `5' 0"`],
    ['7 ft 3 5/8 in', '1/8 in', `7' 3 5/8"`],
    ['5 ft 6.54 in', '0.1 in', `5' 6.5"`],
    ['5 ft 11.96 in', '0.1 in', `6' 0.0"`],
    ['1 in', '1/128 in', `0' 1"`],
  ])('%s to the nearest %s', (text, nearest, printed) => {
    expect(print(text, { as: 'ft-in', nearest })).toBe(printed);
  });

  test('the default step is a sixteenth', () => {
    expect(print('1.234 m', { as: 'ft-in' })).toBe(`4' 0 9/16"`);
    expect(print('1.234 m', { as: 'in' })).toBe('48 9/16 in');
    expect(print('1/2 in', { as: 'in' })).toBe('1/2 in');
    expect(print('-1/2 in', { as: 'in' })).toBe('-1/2 in');
    expect(print('0 in', { as: 'in' })).toBe('0 in');
  });

  test('typographic marks', () => {
    const options = { as: 'ft-in', marks: 'typographic' } as const;
    expect(print('87.625 in', options)).toBe('7′ 3⅝″');
    expect(print('66.4375 in', options)).toBe('5′ 6⁷⁄₁₆″');
    expect(print('-87.5 in', options)).toBe('−7′ 3½″');
    expect(print('-25 mm', { as: 'mm', marks: 'typographic' })).toBe('−25 mm');
  });
});

describe('one unit', () => {
  test.each([
    ['5.5 ft', 'ft', undefined, '5.50 ft'],
    ['5.5 ft', 'm', undefined, '1.676 m'],
    ['5.5 ft', 'mm', undefined, '1676 mm'],
    ['5.5 ft', 'cm', undefined, '167.6 cm'],
    ['5.5 ft', 'yd', undefined, '1.83 yd'],
    ['1 mi', 'km', undefined, '1.609 km'],
    ['5280 ft', 'mi', undefined, '1.000 mi'],
    ['100 ft', 'ft-us', undefined, '100.00 ft-us'],
    ['1609.344 m', 'km', undefined, '1.609 km'],
    ['1/3 ft', 'ft', '0.001 ft', '0.333 ft'],
    ['5.5 ft', 'in', '0.01 in', '66.00 in'],
    ['12.345 m', 'm', '5 mm', '12.345 m'],
    ['12.347 m', 'm', '5 mm', '12.345 m'],
    ['7 mm', 'mm', '5 mm', '5 mm'],
    ['1.5 ft', 'ft', '1/2 ft', '1.5 ft'],
  ] as const)('%s as %s nearest %s', (text, as, nearest, printed) => {
    expect(print(text, nearest === undefined ? { as } : { as, nearest })).toBe(printed);
  });

  test('a decimal comma on request', () => {
    expect(print('1.5 m', { as: 'm', decimalComma: true })).toBe('1,500 m');
    expect(print('5 ft 6.54 in', { as: 'ft-in', nearest: '0.1 in', decimalComma: true })).toBe(
      `5' 6,5"`,
    );
  });

  test('the step may be a length', () => {
    expect(print('1.234 m', { as: 'ft-in', nearest: length('1/4 in') })).toBe(`4' 0 1/2"`);
  });
});

describe('without options, the usual way for the unit it was written in', () => {
  test.each([
    [`7' 3 5/8"`, `7' 3 5/8"`],
    [`7'`, `7' 0"`],
    ['7 ft 3 in', `7' 3"`],
    ['87 5/8 in', '87 5/8 in'],
    ['87.6"', '87 5/8 in'],
    ['7.25 ft', '7.25 ft'],
    [`7.25'`, '7.25 ft'],
    ['60 mm', '60 mm'],
    ['60.4 mm', '60 mm'],
    ['22.25 cm', '22.2 cm'],
    ['2.2256 m', '2.226 m'],
    ['3 yd', '3.00 yd'],
    ['1.2345 km', '1.234 km'],
    ['2 miles', '2.000 mi'],
  ])('%s prints as %s', (text, printed) => {
    expect(formatLength(length(text))).toBe(printed);
  });

  test('sums keep the unit; what is calculated from other kinds prints in metres', () => {
    expect(formatLength(length('5 in').plus(length('1 m')))).toBe('44 3/8 in');
    expect(formatLength(volume('1 yd3').dividedBy(area('81 ft2')))).toBe('0.102 m');
    expect(formatLength(length('60 mm'), { nearest: '5 mm' })).toBe('60 mm');
    expect(formatLength(length(`7' 3"`), { marks: 'typographic' })).toBe('7′ 3″');
  });
});

describe('rounding', () => {
  test.each([
    ['1/32 in', 'half-even', '0'],
    ['3/32 in', 'half-even', '0.125'],
    ['1/32 in', 'half-up', '0.0625'],
    ['-1/32 in', 'half-up', '-0.0625'],
    ['-3/32 in', 'half-even', '-0.125'],
    ['1/128 in', 'up', '0.0625'],
    ['-1/128 in', 'up', '-0.0625'],
    ['7/128 in', 'down', '0'],
    ['-7/128 in', 'down', '0'],
    ['1/16 in', 'up', '0.0625'],
  ] as const)('%s, %s', (text, rounding, inches) => {
    const rounded = roundTo(length(text), length('1/16 in'), rounding);
    expect(rounded.to('in').toString()).toBe(inches);
  });

  test('works on every dimension', () => {
    expect(roundTo(volume('7.03 yd3'), volume('1 yd3'), 'up').to('yd3').toString()).toBe('8');
    expect(roundTo(mass('7.4 t'), mass('0.5 t')).to('t').toString()).toBe('7.5');
  });

  test('a decimal step that does not end in SI still ends in its unit', () => {
    const step = length(0.01, 'ft-us');
    expect(roundTo(length(1.234, 'ft-us'), step).to('ft-us').toString()).toBe('1.23');
  });
});

describe('refuses', () => {
  test.each([
    [() => print('1 m', { as: 'ft-in', nearest: '1 mm' }), 'INCREMENT_UNSUITABLE'],
    [() => print('1 m', { as: 'm', nearest: '1/3 in' }), 'INCREMENT_UNSUITABLE'],
    [() => print('1 m', { as: 'm', nearest: '0 mm' }), 'INCREMENT_NOT_POSITIVE'],
    [() => print('1 m', { as: 'm', nearest: '-1 mm' }), 'INCREMENT_NOT_POSITIVE'],
    [() => print('1 m', { as: 'm', nearest: 'wide' }), 'UNIT_UNKNOWN'],
    [() => print('1 m', { as: 'furlong' as never }), 'UNIT_UNKNOWN'],
    [() => print('1 m', { as: 'm', rounding: 'sideways' as Rounding }), 'UNKNOWN_CHOICE'],
    [() => formatLength(mass('1 kg') as never, { as: 'm' }), 'DIMENSION_MISMATCH'],
    [() => formatLength('1 m' as never, { as: 'm' }), 'DIMENSION_MISMATCH'],
    [() => print('1 m', { as: 'm', nearest: mass('1 kg') as never }), 'DIMENSION_MISMATCH'],
    [() => formatLength(length('1e30', 'm'), { as: 'ft-in' }), 'OUT_OF_RANGE'],
    [() => roundTo(length('1 m'), length('0 m')), 'INCREMENT_NOT_POSITIVE'],
    [() => roundTo(length('1 m'), mass('1 kg') as never), 'DIMENSION_MISMATCH'],
    [() => formatQuantity(volume('1 m3'), { as: 'yd3', places: 1.5 }), 'OUT_OF_RANGE'],
    [() => formatQuantity(volume('1 m3'), { as: 'ft' as never }), 'DIMENSION_MISMATCH'],
    [() => formatQuantity(5 as never, { as: 'ft' }), 'WRONG_TYPE'],
  ] as const)('%s', (run, code) => {
    expectFault(run, code);
  });
});

test.each([-1, 1.5, NaN, Infinity, 13, 1e9, '2', null])(
  'formatQuantity refuses %j places with a code at its option',
  (places) => {
    const { path, message } = expectFault(
      () => formatQuantity(length('1 m'), { places: places as number }),
      'OUT_OF_RANGE',
    );
    expect(path).toEqual(['places']);
    expect(message).toContain('Write a whole number from 0 to 12');
  },
);

test('formatQuantity prints as the quantity was written where no unit is asked for', () => {
  expect(formatQuantity(volume('5.5 yd3'))).toBe('5.50 yd3');
  expect(formatQuantity(volume('5.5 yd3').times(2), { places: 0 })).toBe('11 yd3');
  expect(formatQuantity(length(`7' 6"`))).toBe('7.50 ft');
  expect(formatQuantity(slope('1:48'))).toBe('2.08%');
  expect(formatQuantity(angle('0.5 rad'))).toBe('28.65 deg');
  expect(formatQuantity(fromNumber(2.5, 'm2').times(length('2 m')))).toBe('5.00 m3');
});

test('formatQuantity rounds once from the exact value', () => {
  expect(formatQuantity(volume('5 m3'), { as: 'yd3' })).toBe('6.54 yd3');
  expect(formatQuantity(slope('1:48'), { as: 'percent', places: 3 })).toBe('2.083%');
  expect(formatQuantity(volume('0.125 yd3'), { as: 'yd3' })).toBe('0.12 yd3');
  expect(formatQuantity(volume('0.125 yd3'), { as: 'yd3', rounding: 'half-up' })).toBe('0.13 yd3');
  expect(formatQuantity(volume('-0.001 yd3'), { as: 'yd3' })).toBe('0.00 yd3');
  expect(formatQuantity(volume('1.5 m3'), { as: 'm3', decimalComma: true })).toBe('1,50 m3');
});

test('what is printed reads back as the rounded length', () => {
  for (const [text, options] of [
    ['-3.14159 m', { as: 'ft-in', nearest: '1/64 in' }],
    ['7.77 m', { as: 'ft-in', nearest: '1/32 in', marks: 'typographic' }],
    ['-7.77 m', { as: 'in', marks: 'typographic' }],
    ['7.77 m', { as: 'ft' }],
  ] as const) {
    const printed = print(text, options);
    const step = length(
      options.as === 'ft' ? '0.01 ft' : 'nearest' in options ? options.nearest : '1/16 in',
    );
    expect(parseLength(printed).equals(roundTo(length(text), step)), printed).toBe(true);
  }
});
