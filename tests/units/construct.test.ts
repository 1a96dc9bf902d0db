import { describe, expect, test } from 'vitest';
import { Decimal } from 'decimal.js';
import {
  angle,
  area,
  density,
  flow,
  force,
  fromJSON,
  fromNumber,
  length,
  mass,
  pressure,
  slope,
  speed,
  time,
  volume,
  type QuantityJSON,
} from 'settline/units';
import { toQuantity } from '../../src/units/construct.js';
import { expectFault, expectFaultOrReason } from '../faults.js';

test('a decimal has 40 digits, rounded to the nearest', () => {
  expect(length('1/3 m').to('m').toString()).toBe(`0.${'3'.repeat(40)}`);
  expect(length('2/3 m').to('m').toString()).toBe(`0.${'6'.repeat(39)}7`);
  expect(length('2 kilometres').plus(length('1 kilometre')).to('km').toString()).toBe('3');
});

test('a number too far from one is told apart, large or small', () => {
  const told = (value: string) =>
    expectFault(() => length({ value, unit: 'm' } as never), 'OUT_OF_RANGE').message;
  expect(told('1e5000')).toContain('too large to be a measurement');
  expect(told('1e-5000')).toContain('too small to be a measurement');
});

describe('quantities from text', () => {
  test.each([
    [() => area('81 ft2'), 'yd2', '9'],
    [() => area('81 ft²'), 'ft2', '81'],
    [() => area('1 sq yd'), 'ft2', '9'],
    [() => area('1 acre'), 'ft2', '43560'],
    [() => area('1 ha'), 'm2', '10000'],
    [() => volume('1 cu yd'), 'ft3', '27'],
    [() => volume('7 1/2 yd3'), 'ft3', '202.5'],
    [() => volume('2.5 L'), 'l', '2.5'],
    [() => volume('1 US gal'), 'in3', '231'],
    [() => mass('13 t'), 'kg', '13000'],
    [() => mass('1 short ton'), 'lb', '2000'],
    [() => mass('1 long ton'), 'lb', '2240'],
    [() => mass('3 lbs'), 'oz', '48'],
    [() => mass('3 LB'), 'oz', '48'],
    [() => density('150 pcf'), 'lb/yd3', '4050'],
    [() => density('2.2 t/m³'), 'kg/m3', '2200'],
    [() => density('1.5 ton-us/yd3'), 'lb/yd3', '3000'],
    [() => force('13 lbf'), 'N', '57.8268809983865'],
    [() => pressure('144 psf'), 'psi', '1'],
    [() => pressure('250 kPa'), 'bar', '2.5'],
    [() => angle('90°'), 'gon', '100'],
    [() => angle('1 degree'), 'arcmin', '60'],
    [() => time('1 1/2 hrs'), 'min', '90'],
    [() => time('22 seconds'), 's', '22'],
    [() => speed('3 MPH'), 'ft/min', '264'],
    [() => speed('60 m per min'), 'm/s', '1'],
    [() => flow('1 cu yd/h'), 'ft3/h', '27'],
    [() => flow('10 gpm'), 'l/min', '37.85411784'],
  ] as const)('%s', (make, unit, value) => {
    expect((make() as { to(unit: string): Decimal }).to(unit).toString()).toBe(value);
  });

  test.each([
    [() => mass('13 tons'), 'UNIT_AMBIGUOUS'],
    [() => mass(13, 'ton' as never), 'UNIT_AMBIGUOUS'],
    [() => density('1.4 tons/yd3'), 'UNIT_AMBIGUOUS'],
    [() => volume('5 gallons'), 'UNIT_AMBIGUOUS'],
    [() => flow('5 gal/min'), 'UNIT_AMBIGUOUS'],
    [() => time('5 days'), 'UNIT_UNKNOWN'],
    [() => speed('3 KM/H'), 'CASE'],
    [() => volume('5 buckets'), 'UNIT_UNKNOWN'],
    [() => area('81 ft'), 'UNIT_UNKNOWN'],
    [() => mass('5 KG'), 'CASE'],
    [() => force('5 mN'), 'UNIT_UNKNOWN'],
    [() => area('81'), 'UNIT_MISSING'],
    [() => area(81), 'UNIT_MISSING'],
    [() => area(''), 'EMPTY'],
    [() => area('ft2'), 'NO_NUMBER'],
    [() => area('- 5 ft2'), 'SIGN_SPACE'],
    [() => area('1,000 ft2'), 'COMMA'],
    [() => area(`${'1'.repeat(200)} ft2`), 'TOO_LONG'],
    [() => length(5), 'UNIT_MISSING'],
    [() => length('5.5'), 'UNIT_MISSING'],
    [() => length('5 6'), 'TWO_NUMBERS'],
    [() => length('5 ft', 'm'), 'NOT_A_NUMBER'],
    [() => length({} as never, 'm'), 'WRONG_TYPE'],
    [() => length(null as never), 'WRONG_TYPE'],
    [() => length(5, 'm2' as never), 'DIMENSION_MISMATCH'],
    [() => length(Number.NaN, 'm'), 'NOT_FINITE'],
    [() => length(new Decimal(Number.POSITIVE_INFINITY), 'm'), 'NOT_FINITE'],
  ] as const)('refuses %s', (make, what) => {
    expectFaultOrReason(make, what);
  });
});

describe('quantities from numbers', () => {
  test('a float stands for its shortest digits', () => {
    expect(length(0.1, 'm').toJSON()).toEqual({ value: '0.1', unit: 'm' });
    expect(fromNumber(0.1 + 0.2, 'm').toJSON().value).toBe('0.30000000000000004');
  });

  test('decimals of another copy or clone are taken with all their digits', () => {
    const Other = Decimal.clone({ precision: 60 });
    const third = new Other(1).div(3);
    expect(length(third, 'm').toJSON().value).toBe(third.toFixed());
  });

  test('fromNumber takes floats only', () => {
    expect(fromNumber(1, 'yd3').dimension).toBe('volume');
    expectFault(() => fromNumber('1' as never, 'm'), 'WRONG_TYPE');
    expectFault(() => fromNumber(Number.NaN, 'm'), 'NOT_FINITE');
    expectFault(() => fromNumber(1, 'furlong' as never), 'UNIT_UNKNOWN');
  });

  test('minus zero is zero', () => {
    expect(length(-0, 'm').toJSON().value).toBe('0');
    expect(length('-0 m').isNegative()).toBe(false);
  });
});

describe('inputs', () => {
  test('accepts quantity, text, value and unit', () => {
    const inch = length('1 in');
    expect(toQuantity('length', inch)).toBe(inch);
    expect(toQuantity('length', '1 in').equals(inch)).toBe(true);
    expect(toQuantity('length', { value: '25.4', unit: 'mm' }).equals(inch)).toBe(true);
    expect(toQuantity('length', { value: 1, unit: 'in' }).equals(inch)).toBe(true);
  });

  test.each([
    [area('1 m2'), 'DIMENSION_MISMATCH'],
    [{ value: 1 }, 'UNIT_MISSING'],
    [{ value: 1, unit: 'kg' }, 'DIMENSION_MISMATCH'],
    [{ value: 1, unit: 5 }, 'UNIT_UNKNOWN'],
    [{ unit: 'm' }, 'WRONG_TYPE'],
    [5, 'UNIT_MISSING'],
    [null, 'WRONG_TYPE'],
    [true, 'WRONG_TYPE'],
    [[], 'WRONG_TYPE'],
  ] as const)('refuses %j', (input, code) => {
    expectFault(() => toQuantity('length', input as never), code);
  });
});

test.each(['5 ft 6', '5ft 6', '5 ft6', '5ft6'])('%s is feet and inches', (text) => {
  expect(length(text).to('in').toString()).toBe('66');
});

test('a quantity has no field besides value and unit', () => {
  const issue = expectFault(() => length({ value: 3, unit: 'in', x: 1 } as never), 'UNKNOWN_FIELD');
  expect(issue.path).toEqual(['x']);
  expect(issue.message).toBe('unknown field. A quantity takes value and unit');
  expectFault(() => fromJSON({ value: 3, unit: 'in', x: 1 } as never), 'UNKNOWN_FIELD');
  const saved = structuredClone(length('3 in')) as never;
  expect(length(saved).equals(length('3 in'))).toBe(true);
});

describe('fromJSON', () => {
  test('restores each dimension', () => {
    const all = [
      length('1 1/3 in'),
      area('7 ft2'),
      volume('1 gal-us'),
      mass('3 oz'),
      density('3700 lb/yd3'),
      force('1 lbf'),
      pressure('35 psi'),
      slope('1:48'),
      angle('33 deg'),
    ];
    for (const quantity of all) {
      const again = fromJSON(JSON.parse(JSON.stringify(quantity)) as QuantityJSON);
      expect(again.dimension).toBe(quantity.dimension);
      expect(again.equals(quantity as never), quantity.toString()).toBe(true);
      expect(again.toJSON()).toEqual(quantity.toJSON());
    }
  });

  test('writes the unit in which the digits end', () => {
    expect(density('3700 lb/yd3').toJSON()).toEqual({ value: '3700', unit: 'lb/yd3' });
    expect(slope('1:48').toJSON()).toEqual({ value: '0.25', unit: 'in/ft' });
    expect(angle('45 deg').toJSON()).toEqual({ value: '45', unit: 'deg' });
    expect(angle('1 rad').toJSON()).toEqual({ value: '1', unit: 'rad' });
    expect(length('1/3 in').toJSON()).toEqual({ value: '127/15000', unit: 'm' });
  });

  test.each([
    [{ value: '1', unit: 'furlong' }, 'UNIT_UNKNOWN'],
    [{ value: 'x', unit: 'm' }, 'NOT_A_NUMBER'],
    [{ value: '1' }, 'WRONG_TYPE'],
    [null, 'WRONG_TYPE'],
    ['1 m', 'WRONG_TYPE'],
  ] as const)('refuses %j', (json, code) => {
    expectFault(() => fromJSON(json as never), code);
  });
});
