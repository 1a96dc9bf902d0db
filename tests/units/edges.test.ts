// Limits of what is read and printed, at the last value taken and the first refused, and what is said.
import { Decimal } from 'decimal.js';
import { describe, expect, test } from 'vitest';
import {
  angle,
  area,
  compareQuantities,
  convert,
  formatFor,
  formatLength,
  formatQuantity,
  force,
  fromJSON,
  fromNumber,
  length,
  mass,
  pressure,
  roundTo,
  slope,
  slopeOfAngle,
  time,
  unitsOf,
  volume,
  type AnyQuantity,
  type FormatLengthOptions,
} from 'settline/units';
import { toQuantity } from '../../src/units/construct.js';
import { wholeNumberUp } from '../../src/units/format-quantity.js';
import { expectFault, faultsOf } from '../faults.js';

const five = length('5 ft');

describe('nothing', () => {
  test.each(['0', ' 0 ', '-0', '+0', '0.', '0.0', '000000000', '0.000000000', '\t0.00\n'])(
    '%j needs no unit',
    (text) => {
      const [length, area] = [toQuantity('length', text), toQuantity('area', text)];
      expect([length.toString(), area.toString()]).toEqual(['0 m', '0 m2']);
    },
  );

  test.each(['0000000000', '0.0000000000', '01', '0.01', '10', '1', '-1'])('%s does', (text) => {
    expectFault(() => toQuantity('area', text), 'UNIT_MISSING');
  });

  test.each(['.0', '0 0', '0x', '--0', '- 0', '0..0', ''])('%j is not read at all', (text) => {
    expect(() => toQuantity('area', text)).toThrow();
  });

  test('as a number needs no unit either', () => {
    expect(toQuantity('volume', 0).toString()).toBe('0 m3');
    expect(toQuantity('slope', -0 as 0).isZero()).toBe(true);
    const issue = expectFault(() => toQuantity('time', 1 as 0), 'UNIT_MISSING');
    expect(issue.message).toBe('1 has no unit. Write it with one of s, min, h');
    expect(issue.params).toEqual({ choices: 's, min, h' });
  });
});

describe('value and unit', () => {
  test.each([
    [{ value: 5 }, 'UNIT_MISSING', []],
    [{ value: 5, unit: undefined }, 'UNIT_MISSING', []],
    [{ value: 5, unit: 'ft', units: 'ft' }, 'UNKNOWN_FIELD', ['units']],
    [{ values: 5, unit: 'ft' }, 'UNKNOWN_FIELD', ['values']],
    [{ value: null, unit: 'ft' }, 'WRONG_TYPE', []],
    [{ value: five, unit: 'ft' }, 'WRONG_TYPE', []],
    [{ value: '', unit: 'ft' }, 'NOT_A_NUMBER', []],
    [[5, 'ft'], 'WRONG_TYPE', []],
    [true, 'WRONG_TYPE', []],
  ] as const)('%o is refused: %s', (input, code, path) => {
    const issue = expectFault(() => toQuantity('length', input as never), code);
    expect(issue.path).toEqual(path);
    if (code === 'UNKNOWN_FIELD') expect(issue.params).toEqual({ key: path[0] });
  });

  test.each([
    [null, [], 'expected { value, unit }, got null'],
    [5, [], 'expected { value, unit }, got 5'],
    [{ value: '1' }, [], 'expected { value, unit }, got an object'],
    [{ unit: 'm' }, [], 'expected { value, unit }, got an object'],
    [{ value: '1', unit: 5 }, [], 'expected { value, unit }, got an object'],
    [{ value: null, unit: 'm' }, ['value'], 'expected digits, got null'],
    [{ value: new Decimal(5), unit: 'm' }, ['value'], 'expected digits, got 5'],
  ] as const)('%o is no JSON of a quantity', (json, path, message) => {
    const issue = expectFault(() => fromJSON(json as never), 'WRONG_TYPE');
    expect([issue.path, issue.message]).toEqual([path, message]);
  });

  test('a number with a unit is a number', () => {
    for (const [value, got] of [
      [five, 'a length'],
      [area('1 m2'), 'an area'],
      [null, 'null'],
      [[], 'a list'],
      [{}, 'an object'],
      [true, 'true'],
      [() => 5, 'function'],
    ] as const)
      expect(expectFault(() => length(value as never, 'm'), 'WRONG_TYPE').message).toBe(
        `expected a number with the unit, got ${got}`,
      );
    expect(length(new Decimal('2.5'), 'm').to('cm').toString()).toBe('250');
    expect(length('2.5', 'm').to('cm').toString()).toBe('250');
  });

  test.each([
    [undefined, 'undefined', 'undefined'],
    [5, '5', 'number'],
    [{}, 'an object', 'object'],
    ['furlong', '"furlong"', 'furlong'],
    ['toString', '"toString"', 'toString'],
    ['m2', '"m2"', null],
  ] as const)('the unit %s', (unit, got, param) => {
    const told = expectFault(
      () => five.to(unit as never),
      param === null ? 'DIMENSION_MISMATCH' : 'UNIT_UNKNOWN',
    );
    if (param === null) {
      expect(told.message).toBe('m2 is a unit of area, not of length');
      expect(told.params).toEqual({ expected: 'length', got: 'area', unit: 'm2' });
      return;
    }
    const choices = 'mm, cm, m, km, in, ft, yd, ft-us, mi';
    expect(told.message).toBe(`${got} is not a unit of length. Use one of ${choices}`);
    expect(told.params).toEqual({ unit: param, choices });
    const any = expectFault(() => fromNumber(1, unit as never), 'UNIT_UNKNOWN');
    expect(any.message).toBe(`${got} is not a unit this library knows`);
    expect(any.params).toEqual({ unit: param });
  });

  test.each(['ton', 'tons', 'TON', 'Tons'])('%s is not one unit', (unit) => {
    const issue = expectFault(() => mass(5, unit as never), 'UNIT_AMBIGUOUS');
    expect(issue.params).toEqual({ unit });
    expect(issue.message).toContain('Write t (1000 kg), ton-us (2000 lb) or ton-uk (2240 lb)');
  });

  test.each(['tonss', 'aton', 'to'])('%s is none', (unit) => {
    expectFault(() => mass(5, unit as never), 'UNIT_UNKNOWN');
  });

  test('a word that is no dimension', () => {
    for (const dimension of ['breadth', 'toString', 5, undefined]) {
      const issue = expectFault(() => unitsOf(dimension as never), 'UNKNOWN_CHOICE');
      expect(String(issue.params['choices'])).toMatch(/^length, area, .*, flow$/);
    }
  });
});

describe('numbers', () => {
  const number = (value: unknown) => convert(value as number, 'm', 'm').toString();

  test.each([
    ['5.', '5'],
    ['.5', '0.5'],
    ['+5', '5'],
    ['-.5', '-0.5'],
    ['5e3', '5000'],
    ['5E+3', '5000'],
    ['5e-3', '0.005'],
    ['.5e1', '5'],
    ['-5/-2', '2.5'],
    ['0.5/0.25', '2'],
    ['1e3/1e2', '10'],
    ['0/5', '0'],
    ['0e999999', '0'],
    ['1234567890.12345', '1234567890.12345'],
    ['1234567890.123456', '1234567890.123456'],
    ['000000000000000000005', '5'],
    ['1e60', `1${'0'.repeat(60)}`],
    ['-9.99e60', `-999${'0'.repeat(58)}`],
    ['1e-60', `0.${'0'.repeat(59)}1`],
    ['1e61/10', `1${'0'.repeat(60)}`],
    [1e60, `1${'0'.repeat(60)}`],
    [1e-60, `0.${'0'.repeat(59)}1`],
    [2 ** 53, '9007199254740992'],
    [-1.5, '-1.5'],
    [1.5e-7, '0.00000015'],
    [new Decimal('-1.5e-7'), '-0.00000015'],
  ] as const)('%s is %s', (value, digits) => {
    expect(number(value)).toBe(digits);
  });

  test.each([
    ['1e61', 'OUT_OF_RANGE', '10^61 is too large to be a measurement'],
    ['1e-61', 'OUT_OF_RANGE', '10^-61 is too small to be a measurement'],
    ['9.9e-61', 'OUT_OF_RANGE', '10^-61 is too small to be a measurement'],
    ['1/1e61', 'OUT_OF_RANGE', '10^-61 is too small to be a measurement'],
    ['1e1000000', 'NOT_A_NUMBER', '"1e1000000" is not a number'],
    ['', 'NOT_A_NUMBER', '"" is not a number'],
    ['.', 'NOT_A_NUMBER', '"." is not a number'],
    ['-', 'NOT_A_NUMBER', '"-" is not a number'],
    ['e5', 'NOT_A_NUMBER', '"e5" is not a number'],
    ['5e', 'NOT_A_NUMBER', '"5e" is not a number'],
    ['5x', 'NOT_A_NUMBER', '"5x" is not a number'],
    ['x5', 'NOT_A_NUMBER', '"x5" is not a number'],
    ['1.2.3', 'NOT_A_NUMBER', '"1.2.3" is not a number'],
    ['1-', 'NOT_A_NUMBER', '"1-" is not a number'],
    ['1/', 'NOT_A_NUMBER', '"1/" is not a number'],
    ['/2', 'NOT_A_NUMBER', '"/2" is not a number'],
    ['1/2/3', 'NOT_A_NUMBER', '"1/2/3" is not a number'],
    ['1/0.0', 'DIVISION_BY_ZERO', '"1/0.0" divides by zero'],
    [Number.NaN, 'NOT_FINITE', 'NaN is not a number'],
    [-Infinity, 'NOT_FINITE', '-Infinity is not a number'],
    [new Decimal(Number.NaN), 'NOT_FINITE', 'NaN is not a number'],
    [new Decimal(-Infinity), 'NOT_FINITE', '-Infinity is not a number'],
    [1e61, 'OUT_OF_RANGE', '10^61 is too large to be a measurement'],
    [true, 'WRONG_TYPE', 'expected a number, got true'],
    [undefined, 'WRONG_TYPE', 'expected a number, got undefined'],
  ] as const)('%s is refused: %s', (value, code, message) => {
    const issue = expectFault(() => number(value), code);
    expect(issue.message).toBe(message);
    if (code === 'NOT_A_NUMBER' || code === 'DIVISION_BY_ZERO')
      expect(issue.params).toEqual({ text: value });
  });

  test('of twenty thousand characters is the longest', () => {
    expect(number(`${'0'.repeat(19_999)}5`)).toBe('5');
    const issue = expectFault(() => number(`${'0'.repeat(20_000)}5`), 'TOO_LONG');
    expect(issue.message).toContain('000..." has too many digits for a number');
  });

  test('what only looks like a decimal is none', () => {
    const fake = {
      toStringTag: '[object Decimal]',
      toString() {
        throw new TypeError('no');
      },
    };
    expect(expectFault(() => number(fake), 'WRONG_TYPE').message).toBe(
      'expected a number, got an object that only looks like a decimal',
    );
    expect(expectFault(() => length(fake as never), 'UNIT_MISSING').message).toContain(
      'an object has no unit',
    );
  });

  test('a tiny float is taken from a calculation, a large one is not', () => {
    expect(fromNumber(1e-300, 'm').isZero()).toBe(false);
    expect(fromNumber(-5e-324, 'm').isNegative()).toBe(true);
    expect(fromNumber(1e60, 'm').to('m').toString()).toBe(`1${'0'.repeat(60)}`);
    expectFault(() => fromNumber(1e61, 'm'), 'OUT_OF_RANGE');
    expectFault(() => fromNumber(-1e61, 'm'), 'OUT_OF_RANGE');
    expect(expectFault(() => fromNumber('1' as never, 'm'), 'WRONG_TYPE').message).toBe(
      'expected a number, got "1"',
    );
  });

  test('decimals print all their digits, never a power of ten', () => {
    expect(length('1e-30', 'm').to('m').toString()).toBe(`0.${'0'.repeat(29)}1`);
    expect(length('1e30', 'm').to('mm').toString()).toBe(`1${'0'.repeat(33)}`);
    expect(length('1e30', 'm').to('m').times('1e20').toString()).toBe(`1${'0'.repeat(50)}`);
  });

  test('too large for a float', () => {
    const large = length('1e60', 'm').times('1e60').times('1e60').times('1e60').times('1e60');
    expect(large.toNumber('m')).toBe(1e300);
    expect(expectFault(() => large.times('1e10').toNumber('m'), 'OUT_OF_RANGE').message).toBe(
      'too large for a float',
    );
  });
});

describe('options', () => {
  test.each([null, [], 5, 'ft'])('%j are none', (options) => {
    for (const run of [
      () => formatLength(five, options as never),
      () => formatQuantity(five, options as never),
    ]) {
      const issue = expectFault(run, 'WRONG_TYPE');
      expect(issue.message).toMatch(/^expected options { ... }, got /);
      expect(issue.path).toEqual([]);
    }
  });

  test('that are undefined are left out', () => {
    const none = {
      as: undefined,
      nearest: undefined,
      rounding: undefined,
      marks: undefined,
      decimalComma: undefined,
    } as unknown as FormatLengthOptions;
    expect(formatLength(length(`7' 3 5/8"`), none)).toBe(`7' 3 5/8"`);
    expect(formatLength(length(`7' 3 5/8"`), {})).toBe(`7' 3 5/8"`);
    const fewer = { as: undefined, places: undefined, rounding: undefined } as never;
    expect(formatQuantity(volume('5.5 yd3'), fewer)).toBe('5.50 yd3');
  });

  test.each([
    ['rounding', 'sideways', 'UNKNOWN_CHOICE', { choices: 'half-up, half-even, up, down' }],
    ['rounding', 5, 'UNKNOWN_CHOICE', { choices: 'half-up, half-even, up, down' }],
    ['marks', 'fancy', 'UNKNOWN_CHOICE', { choices: 'plain, typographic' }],
    ['decimalComma', 1, 'WRONG_TYPE', {}],
    ['as', 'foot', 'UNIT_UNKNOWN', { choices: 'ft-in, mm, cm, m, km, in, ft, yd, ft-us, mi' }],
    ['as', 'toString', 'UNIT_UNKNOWN', { choices: 'ft-in, mm, cm, m, km, in, ft, yd, ft-us, mi' }],
    ['nearest', '0 in', 'INCREMENT_NOT_POSITIVE', {}],
    ['nearest', '-1 in', 'INCREMENT_NOT_POSITIVE', {}],
    ['nearest', '1 mm', 'INCREMENT_UNSUITABLE', { unit: 'in', step: '1 mm' }],
  ] as const)('%s: %s', (name, value, code, params) => {
    const options = { as: 'ft-in', [name]: value } as never;
    const faults = faultsOf(() => formatLength(five, options));
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatchObject({ path: [name], code });
    expect(faults[0]?.params).toEqual(params);
  });

  test('the roundings of roundTo', () => {
    const issue = expectFault(() => roundTo(five, five, 'sideways' as never), 'UNKNOWN_CHOICE');
    expect(issue.path).toEqual(['rounding']);
    expect(issue.params).toEqual({ choices: 'half-up, half-even, up, down' });
    expect(expectFault(() => roundTo('5 ft' as never, five), 'WRONG_TYPE').message).toBe(
      'expected a quantity to round, got "5 ft"',
    );
    expectFault(() => roundTo(five, length('-1 in')), 'INCREMENT_NOT_POSITIVE');
  });

  test.each([0, 12])('%i decimal places', (places) => {
    expect(formatQuantity(volume('5 m3'), { places })).toBe(
      `5${places === 0 ? '' : `.${'0'.repeat(places)}`} m3`,
    );
  });

  test.each([-1, 13, 1.5, '2', null, Number.NaN])('%s decimal places', (places) => {
    const issue = expectFault(
      () => formatQuantity(volume('5 m3'), { places: places as number }),
      'OUT_OF_RANGE',
    );
    expect(issue.path).toEqual(['places']);
    expect(issue.message).toContain(
      'decimal places are not possible. Write a whole number from 0 to 12',
    );
  });

  test('the unit asked for is one of the kind', () => {
    expectFault(() => formatQuantity(volume('5 m3'), { as: 'buckets' as never }), 'UNIT_UNKNOWN');
    expectFault(() => compareQuantities('5 ft' as never, five), 'WRONG_TYPE');
    expectFault(() => compareQuantities(five, '5 ft' as never), 'DIMENSION_MISMATCH');
  });
});

describe('a step', () => {
  test.each([
    ['1/2 in', `7' 3 1/2"`, '87 1/2 in'],
    ['1/4 in', `7' 3 3/4"`, '87 3/4 in'],
    ['1/8 in', `7' 3 5/8"`, '87 5/8 in'],
    ['1/16 in', `7' 3 11/16"`, '87 11/16 in'],
    ['1/32 in', `7' 3 21/32"`, '87 21/32 in'],
    ['1/64 in', `7' 3 43/64"`, '87 43/64 in'],
    ['1/128 in', `7' 3 43/64"`, '87 43/64 in'],
    ['1 in', `7' 4"`, '88 in'],
    ['3/128 in', undefined, '87.6796875 in'],
    ['1 ft', `7' 0"`, '84 in'],
    ['0.01 in', `7' 3.67"`, '87.67 in'],
  ])('of %s', (nearest, feet, inches) => {
    const value = length('87.67 in');
    if (feet !== undefined) expect(formatLength(value, { as: 'ft-in', nearest })).toBe(feet);
    expect(formatLength(value, { as: 'in', nearest })).toBe(inches);
    const step = length(nearest);
    for (let again = 0; again < 2; again += 1)
      expect(formatLength(value, { as: 'in', nearest: step })).toBe(inches);
  });

  test('has nine decimals at the most', () => {
    expect(formatLength(five, { as: 'm', nearest: '0.000000001 m' })).toBe('1.524000000 m');
    const issue = expectFault(
      () => formatLength(five, { as: 'm', nearest: '0.0000000001 m' }),
      'INCREMENT_UNSUITABLE',
    );
    expect(issue.message).toContain(
      'lengths in m cannot be rounded to 0.0000000001 m. Write a step in m',
    );
  });

  test('may be in survey feet', () => {
    expect(formatLength(length('3.2 ft'), { as: 'ft-us', nearest: '0.5 us-ft' })).toBe('3.0 ft-us');
  });

  test('and a length are no more than floats count', () => {
    const most = Number.MAX_SAFE_INTEGER;
    expect(formatLength(length(most, 'mm'), { as: 'mm' })).toBe(`${most} mm`);
    expect(formatLength(length(-most, 'mm'), { as: 'mm' })).toBe(`-${most} mm`);
    for (const [long, options] of [
      [length(`${most + 1}`, 'mm'), { as: 'mm' }],
      [length(`${most}`, 'm'), { as: 'm', nearest: '0.5 m' }],
    ] as const)
      expect(expectFault(() => formatLength(long, options), 'OUT_OF_RANGE').message).toBe(
        'too long to print',
      );
  });
});

describe('typographic fractions', () => {
  test.each([
    ['1/2', '½'],
    ['1/4', '¼'],
    ['3/4', '¾'],
    ['1/8', '⅛'],
    ['3/8', '⅜'],
    ['5/8', '⅝'],
    ['7/8', '⅞'],
    ['1/16', '¹⁄₁₆'],
    ['23/64', '²³⁄₆₄'],
    ['89/128', '⁸⁹⁄₁₂₈'],
    ['45/64', '⁴⁵⁄₆₄'],
    ['61/128', '⁶¹⁄₁₂₈'],
    ['7/32', '⁷⁄₃₂'],
    ['105/128', '¹⁰⁵⁄₁₂₈'],
  ])('%s is %s', (plain, glyph) => {
    const value = length(`7' 3 ${plain}"`);
    const options = { nearest: '1/128 in', marks: 'typographic' } as const;
    expect(formatLength(value, { as: 'ft-in', ...options })).toBe(`7′ 3${glyph}″`);
    expect(formatLength(value.negated(), { as: 'in', ...options })).toBe(`−87${glyph} in`);
    expect(formatLength(length(`${plain} in`), { as: 'in', ...options })).toBe(`${glyph} in`);
    expect(formatLength(length(`${plain} in`), { as: 'ft-in', ...options })).toBe(`0′ 0${glyph}″`);
  });
});

test.each<readonly [AnyQuantity, string, string]>([
  [mass('1 t'), '1.1 short tons', '1.0 t'],
  [mass('999 kg'), '1.1 short tons', '999.0 kg'],
  [mass('1999 lb'), '1999.0 lb', '906.7 kg'],
  [mass('-3 t'), '-3.3 short tons', '-3.0 t'],
  [force('1 kN'), '224.8 lbf', '1.00 kN'],
  [force('999 N'), '224.6 lbf', '999.0 N'],
  [pressure('1 MPa'), '145.0 psi', '1.00 MPa'],
  [pressure('999 kPa'), '144.9 psi', '999.0 kPa'],
  [time('2 min'), '2.0 min', '2.0 min'],
  [time('119 s'), '119 s', '119 s'],
  [time('119 min'), '119.0 min', '119.0 min'],
  [slope('0.1%'), '0.1%', '0.1%'],
  [slope('0.099%'), '0.099%', '0.099%'],
  [angle('0.01 deg'), '0.01 deg', '0.01 deg'],
  [length('0.49 in'), '0.490 in', '12 mm'],
  [length('-0.51 in'), '-1/2 in', '-13 mm'],
  [length('9.9 mm'), '0.390 in', '9.90 mm'],
  [length('10.2 mm'), '0.402 in', '10 mm'],
  [length('2.9999 m'), '118 1/8 in', '3000 mm'],
  [length('-10 ft'), `-10' 0"`, '-3.048 m'],
  [length('9 ft 11.99 in'), '120 in', '3.048 m'],
  [fromNumber(1e-20, 'm2'), '0.000000000000 ft2', '0.000000000000 m2'],
])('%o on a sheet: %s, %s', (value, us, metric) => {
  expect([formatFor(value, 'us'), formatFor(value, 'metric')]).toEqual([us, metric]);
});

describe('packs', () => {
  test.each([
    ['0 yd3', '10 yd3', 0],
    ['10 yd3', '10 yd3', 1],
    ['10.0001 yd3', '10 yd3', 2],
    ['1/3 yd3', '1/9 yd3', 3],
  ])('%s in packs of %s: %i', (need, pack, count) => {
    expect(wholeNumberUp(volume(need), volume(pack))).toBe(count);
  });

  test('of nothing, or beyond what can be counted', () => {
    expectFault(() => wholeNumberUp(volume('1 m3'), volume('0 m3')), 'DIVISION_BY_ZERO');
    expectFault(() => wholeNumberUp(volume('1e20', 'm3'), volume('1 m3')), 'CAPACITY_EXCEEDED');
  });
});

test('the vertical is no slope, and what is just below is', () => {
  for (const text of ['90 deg', '-90 deg', '100 gon', '91 deg'])
    expectFault(() => slopeOfAngle(angle(text)), 'OUT_OF_RANGE');
  expect(slopeOfAngle(angle('89.999 deg')).toNumber('ratio')).toBeGreaterThan(57_000);
  expect(slopeOfAngle(angle('-89.999 deg')).toNumber('ratio')).toBeLessThan(-57_000);
  expectFault(() => slopeOfAngle(slope('2%') as never), 'DIMENSION_MISMATCH');
});

test('a length is no farther than a map', () => {
  const issue = expectFault(() => length('100000.001 km'), 'OUT_OF_RANGE');
  expect(issue.message).toBe('"100000.001 km" is beyond 100000 km');
  expect(issue.params).toEqual({ text: '100000.001 km', position: 0 });
});
