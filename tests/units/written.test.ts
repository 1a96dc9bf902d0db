// A quantity as JSON, as a clone, as text, and in a console.
import { inspect } from 'node:util';
import { describe, expect, test } from 'vitest';
import {
  angle,
  area,
  density,
  flow,
  fromJSON,
  fromNumber,
  length,
  slope,
  speed,
  time,
  volume,
  type AnyQuantity,
} from 'settline/units';

test.each<readonly [AnyQuantity, string, string]>([
  [length('1 in'), '0.0254', 'm'],
  [length('-1 in'), '-0.0254', 'm'],
  [length('100 m'), '100', 'm'],
  [length('1e-16', 'm'), '0.0000000000000001', 'm'],
  [length('-1e-20', 'm'), '-0.00000000000000000001', 'm'],
  [length('12345678901234567890.5', 'm'), '12345678901234567890.5', 'm'],
  [length('1/3 in'), '127/15000', 'm'],
  [length('-1/3 in'), '-127/15000', 'm'],
  [length(1, 'ft-us'), '1', 'ft-us'],
  [length('1/7', 'm'), '1/7', 'm'],
  [area('1/3 ft2'), '0.03096768', 'm2'],
  [area('1/7 ft2'), '145161/10937500', 'm2'],
  [density('1/3 lb/ft3'), '9', 'lb/yd3'],
  [density('1/27', 'kg/m3'), '1/27', 'kg/m3'],
  [density('2.5 lb/ft3'), '2.5', 'lb/ft3'],
  [slope('1:3'), '4', 'in/ft'],
  [slope('1:7'), '1/7', 'ratio'],
  [slope('2%'), '0.02', 'ratio'],
  [time('1/3 h'), '1200', 's'],
  [time('1/7 h'), '3600/7', 's'],
  [time('1/3', 's'), '1/3', 's'],
  [speed('1 km/h'), '1', 'km/h'],
  [speed('5 m/min'), '5', 'm/min'],
  [flow('1 m3/h'), '1', 'm3/h'],
  [flow('1 l/min'), '0.06', 'm3/h'],
  [flow('1 gal-us/min'), '0.0000630901964', 'm3/s'],
  [angle('45 deg'), '45', 'deg'],
  [angle('50 gon'), '45', 'deg'],
  [angle('1 rad'), '1', 'rad'],
  [angle('0 rad'), '0', 'deg'],
])('%o as JSON: %s %s', (quantity, value, unit) => {
  expect(quantity.toJSON()).toEqual({ value, unit });
  expect(fromJSON(quantity.toJSON()).equals(quantity as never)).toBe(true);
});

test.each([
  ['1e15', '1000000000000000'],
  ['-1e15', '-1000000000000000'],
  ['999999999999999', 999_999_999_999_999],
  ['-999999999999999', -999_999_999_999_999],
  ['99999999999999.9', 99_999_999_999_999.9],
  ['9007199254740991', '9007199254740991'],
  ['1e16', '10000000000000000'],
  ['1e-15', 1e-15],
  ['1e-16', '0.0000000000000001'],
  ['1/3', '1/3'],
  ['0.1', 0.1],
])('the plain value of %s m', (digits, value) => {
  expect(structuredClone(length(digits, 'm'))).toEqual({ value, unit: 'm' });
});

test('an angle whose digits end in no unit comes back', () => {
  for (const one of [angle('1 arcmin'), angle('1/7 deg'), angle('1/3 rad')])
    expect(fromJSON(one.toJSON()).equals(one as never)).toBe(true);
});

describe('as text', () => {
  test.each<readonly [AnyQuantity, string, string]>([
    [length('123456 m'), '123456 m', '123456 m'],
    [length('1234567 m'), '1234567 m', '1.23456…e+6 m'],
    [length('999999.5 m'), '999999.5 m', '999999… m'],
    [length('-1234.5678 m'), '-1234.5678 m', '-1234.56… m'],
    [length('1000000 m'), '1000000 m', '1000000 m'],
    [length('1/3 ft'), `0.${'3'.repeat(40)} ft`, '0.333333… ft'],
    [length(`7' 3"`), `7' 3"`, `7' 3"`],
    [length(`7' 3"`).dividedBy(256), '0.33984375 in', '0.339843… in'],
    [length(`7' 3"`).times('1/87').dividedBy(128), `0' 0 1/128"`, `0' 0 1/128"`],
    [slope('1:48'), `2.08${'3'.repeat(37)}%`, '2.08333…%'],
    [slope('0.25 in/ft'), `2.08${'3'.repeat(37)}%`, '2.08333…%'],
    [angle('0.5 gon'), '0.45 deg', '0.45 deg'],
    [volume('1 yd3').dividedBy(area('1 yd2')), '0.9144 m', '0.9144 m'],
    [fromNumber(2, 'yd3'), '2 yd3', '2 yd3'],
  ])('%o', (quantity, text, short) => {
    expect(quantity.toString()).toBe(text);
    expect(inspect(quantity)).toBe(short);
  });
});
