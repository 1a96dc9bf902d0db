import { describe, expect, test } from 'vitest';
import assert from 'node:assert/strict';
import { inspect } from 'node:util';
import { buildUp } from 'settline/build-up';
import {
  angle,
  area,
  compareQuantities,
  density,
  flow,
  force,
  fromJSON,
  isQuantity,
  length,
  mass,
  max,
  min,
  pressure,
  roundTo,
  slope,
  speed,
  sum,
  time,
  volume,
  type Length,
} from 'settline/units';
import { expectFault } from '../faults.js';

describe('algebra', () => {
  test('length x length = area, area x length = volume', () => {
    const square = length('9 ft').times(length('9 ft'));
    expect(square.dimension).toBe('area');
    const layer = square.times(length('4 in'));
    expect(layer.dimension).toBe('volume');
    expect(layer.to('yd3').toString()).toBe('1');
  });

  test('volume x density = mass, and back', () => {
    const load = volume('10 yd3').times(density('2700 lb/yd3'));
    expect(load.dimension).toBe('mass');
    expect(load.to('lb').toString()).toBe('27000');
    expect(load.dividedBy(density('2700 lb/yd3')).to('yd3').toString()).toBe('10');
    expect(load.dividedBy(volume('10 yd3')).to('lb/yd3').toString()).toBe('2700');
    expect(density('2700 lb/yd3').times(volume('1 yd3')).to('lb').toString()).toBe('2700');
  });

  test('force / area = pressure, pressure x area = force', () => {
    const tyre = force('144 lbf').dividedBy(area('1 ft2'));
    expect(tyre.dimension).toBe('pressure');
    expect(tyre.to('psi').toString()).toBe('1');
    expect(pressure('1 psi').times(area('1 ft2')).to('lbf').toString()).toBe('144');
    expect(force('144 lbf').dividedBy(pressure('1 psi')).to('ft2').toString()).toBe('1');
  });

  test('length / length = a plain decimal', () => {
    expect(length('1 yd').dividedBy(length('1 ft')).toString()).toBe('3');
  });

  test('a quotient by a fall keeps its sign, with numbers that floats cannot hold too', () => {
    for (const size of ['1', '12345678901234567890123456789']) {
      // a third of it down
      const fall = length('1 m').times(size).dividedBy(-3);
      const run = fall.dividedBy(slope('-1:3'));
      expect(run.compare(length('0 m'))).toBe(1);
      expect(run.equals(length('1 m').times(size))).toBe(true);
      expect(length('1 m').times(size).dividedBy(fall).toString()).toBe('-3');
      const raised = volume('1 m3').dividedBy(fall).times(fall);
      expect(raised.equals(volume('1 m3'))).toBe(true);
      expect(volume('1 m3').dividedBy(fall).isNegative()).toBe(true);
    }
  });

  test('run x slope = rise, rise / slope = run', () => {
    expect(length('12 ft').times(slope('1/4 in per ft')).to('in').toString()).toBe('3');
    expect(length('3 in').dividedBy(slope('1:48')).to('ft').toString()).toBe('12');
    expect(slope('1:48').times(length('12 ft')).to('in').toString()).toBe('3');
  });

  test('volume / length = area, volume / area = length, area / length = length', () => {
    expect(volume('27 ft3').dividedBy(length('3 ft')).to('ft2').toString()).toBe('9');
    expect(volume('1 yd3').dividedBy(area('81 ft2')).to('in').toString()).toBe('4');
    expect(area('81 ft2').dividedBy(length('9 ft')).to('ft').toString()).toBe('9');
  });

  test('speed x time = length, flow x time = volume, and back', () => {
    expect(speed('20 m/min').times(time('90 s')).to('m').toString()).toBe('30');
    expect(time('90 s').times(speed('20 m/min')).to('m').toString()).toBe('30');
    expect(length('30 m').dividedBy(time('90 s')).to('m/min').toString()).toBe('20');
    expect(length('30 m').dividedBy(speed('20 m/min')).to('s').toString()).toBe('90');
    expect(flow('120 l/min').times(time('10 min')).to('m3').toString()).toBe('1.2');
    expect(time('1 h').times(flow('27 ft3/h')).to('yd3').toString()).toBe('1');
    expect(volume('1 yd3').dividedBy(time('2 h')).to('ft3/h').toString()).toBe('13.5');
    expect(volume('1 yd3').dividedBy(flow('13.5 ft3/h')).to('min').toString()).toBe('120');
  });

  test('plain numbers scale', () => {
    expect(length('1 in').times('1/3').times(3).to('in').toString()).toBe('1');
    expect(length('10 in').dividedBy(3).times(3).to('in').toString()).toBe('10');
    expect(length('-1 in').abs().to('in').toString()).toBe('1');
    expect(length('1 in').negated().isNegative()).toBe(true);
    expect(length('0 in').negated().isNegative()).toBe(false);
  });

  test.each([
    [() => length('1 m').plus(area('1 m2') as never), 'DIMENSION_MISMATCH'],
    [() => length('1 m').compare(5 as never), 'DIMENSION_MISMATCH'],
    [() => length('1 m').times(mass('1 kg') as never), 'NO_KNOWN_PRODUCT'],
    [() => length('1 m').dividedBy(mass('1 kg') as never), 'NO_KNOWN_PRODUCT'],
    [() => length('1 m').dividedBy(0), 'DIVISION_BY_ZERO'],
    [() => length('1 m').dividedBy(length('0 m')), 'DIVISION_BY_ZERO'],
    [() => length('1 m').times(Number.NaN), 'NOT_FINITE'],
    [() => length('1 m').to('kg' as never), 'DIMENSION_MISMATCH'],
    [() => length('1 m').to('furlong' as never), 'UNIT_UNKNOWN'],
  ] as const)('refuses %s', (run, code) => {
    expectFault(run, code);
  });
});

describe('order', () => {
  const lengths = ['2 in', '50 mm', '1/6 ft', '-1 m'].map((text) => length(text));

  test('compares exactly, over units', () => {
    expect(length('2 in').compare(length('1/6 ft'))).toBe(0);
    expect(length('2 in').equals(length('50.8 mm'))).toBe(true);
    expect(length('2 in').compare(length('50 mm'))).toBe(1);
  });

  test('is told in words', () => {
    const [foot, yard] = [length('1 ft'), length('1 yd')];
    expect([foot.lessThan(yard), yard.lessThan(foot), foot.lessThan(foot)]).toEqual([
      true,
      false,
      false,
    ]);
    expect([foot.greaterThan(yard), yard.greaterThan(foot), foot.greaterThan(foot)]).toEqual([
      false,
      true,
      false,
    ]);
    expect([foot.atLeast(yard), yard.atLeast(foot), foot.atLeast(length('12 in'))]).toEqual([
      false,
      true,
      true,
    ]);
    expect([foot.atMost(yard), yard.atMost(foot), foot.atMost(length('12 in'))]).toEqual([
      true,
      false,
      true,
    ]);
    expect(length('1/3 in').lessThan(length('0.3333333333333333 in'))).toBe(false);
    for (const name of ['lessThan', 'greaterThan', 'atLeast', 'atMost'] as const) {
      expectFault(() => foot[name](area('1 ft2') as never), 'DIMENSION_MISMATCH');
      expectFault(() => foot[name](5 as never), 'DIMENSION_MISMATCH');
    }
  });

  test.each([
    ['<', (a: Length, b: Length) => a < b],
    ['>', (a: Length, b: Length) => a > b],
    ['<=', (a: Length, b: Length) => a <= b],
    ['unary +', (a: Length) => +a],
    ['binary +', (a: Length, b: Length) => (a as unknown as number) + (b as unknown as number)],
    ['*', (a: Length) => (a as unknown as number) * 2],
    ['-', (a: Length, b: Length) => (a as unknown as number) - (b as unknown as number)],
    ['Number', (a: Length) => Number(a)],
    ['Math.max', (a: Length, b: Length) => Math.max(a as never, b as never)],
    ['isNaN', (a: Length) => isNaN(a as never)],
  ])('%s on quantities throws, and names what to write', (_, run) => {
    const issue = expectFault(() => run(length('33 ft'), length('7 ft')), 'OPERATOR_ON_QUANTITY');
    for (const name of ['compare', 'lessThan', 'greaterThan', 'toNumber']) {
      expect(issue.message).toContain(name);
    }
  });

  test('min, max, sum, sort', () => {
    expect(min(lengths).to('m').toString()).toBe('-1');
    expect(max(lengths).to('in').toString()).toBe('2');
    expect(sum(lengths.slice(0, 3)).to('mm').toString()).toBe('151.6');
    expect([...lengths].sort(compareQuantities).map((one) => one.to('mm').toNumber())).toEqual([
      -1000, 50, 50.8, 50.8,
    ]);
    for (const of of [min, max, sum]) expectFault(() => of([] as Length[]), 'EMPTY_LIST');
  });
});

/** What a template string shows. */
const inText = (quantity: unknown): string => `it is ${quantity as string}`.slice('it is '.length);

describe('a quantity as a value', () => {
  test('is frozen', () => {
    const inch = length('1 in');
    expect(Object.isFrozen(inch)).toBe(true);
    expect(() => Object.assign(inch, { dimension: 'area' })).toThrow(TypeError);
  });

  test('is equal or not in a deep comparison', () => {
    expect(length('1 in')).toEqual(length('25.4 mm'));
    expect(length('1 in')).toStrictEqual(length('25.4 mm'));
    expect(length('1 in')).not.toEqual(length('25.5 mm'));
    expect(length('1/3 in')).toEqual(length('1/9 in').times(3));
    expect(length('1/3 in')).not.toEqual(length('2/3 in'));
    expect(length('1 m')).not.toEqual(area('1 m2'));
    assert.deepStrictEqual(length('5 ft'), length('60 in'));
    expect(() => {
      assert.deepStrictEqual(length('5 ft'), length('5 yd'));
    }).toThrow(assert.AssertionError);
  });

  test.each([
    ['9007199254740991', '9007199254740991'],
    ['1e15', '1000000000000000'],
    ['999999999999999.9', '9999999999999999/10'],
    ['0.1', '1/10'],
    ['1e-16', '1/10000000000000000'],
    ['1/3', '3/9'],
    ['1/1048576', '0.00000095367431640625'],
  ])('%s m equals %s m field by field', (one, other) => {
    expect(length(one, 'm')).toEqual(length(other, 'm'));
    expect(length(one, 'm').times(7).dividedBy(7)).toEqual(length(other, 'm'));
    expect(structuredClone(length(one, 'm'))).toEqual(structuredClone(length(other, 'm')));
  });

  test.each([
    '5 ft',
    '1/3 in',
    '-2 3/8 in',
    '0 in',
    '0.1234567890123456789 m',
    '90071992547.40991 mm',
  ])('a clone of %s is plain data, and restores it', (text) => {
    const whole = length(text);
    const clone: unknown = structuredClone(whole);
    expect(Object.getPrototypeOf(clone)).toBe(Object.prototype);
    expect(Object.keys(clone as object)).toEqual(['value', 'unit']);
    expect(isQuantity(clone)).toBe(false);
    expect(fromJSON(clone as never)).toEqual(whole);
    expect(fromJSON(JSON.parse(JSON.stringify(clone)) as never)).toEqual(whole);
    expect(whole.plus(fromJSON(clone as never) as Length)).toEqual(whole.times(2));
  });

  test('a clone is taken for the quantity wherever a quantity is an input', () => {
    for (const text of ['1 in', '1/3 in']) {
      const clone = structuredClone(length(text)) as unknown as string;
      expect(buildUp({ layers: [{ name: 'sand', thickness: clone }] }).total).toEqual(length(text));
    }
  });

  test.each([
    ['5 ft', '5 ft'],
    ['12 in', '12 in'],
    [`7' 3 5/8"`, `7' 3 5/8"`],
    [`7'`, `7' 0"`],
    [`7.25'`, '7.25 ft'],
    ['2 3/8"', '2.375 in'],
    ['1/3 in', '0.333333… in'],
    ['-2/3 in', '-0.666666… in'],
    ['1234.5678 mm', '1234.56… mm'],
    ['123456789 mm', '1.23456…e+8 mm'],
    ['1234567 m', '1.23456…e+6 m'],
    ['123456 m', '123456 m'],
    ['0.00001234567 m', '0.0000123456… m'],
  ])('%s shows as %s in a console', (text, shown) => {
    expect(inspect(length(text))).toBe(shown);
  });

  test('prints in the unit it was written in', () => {
    expect(inspect(slope('1:48'))).toBe('2.08333…%');
    expect(inspect(slope('2%'))).toBe('2%');
    expect(inspect(slope('20 mm/m'))).toBe('2%');
    expect(inspect(angle('100 gon'))).toBe('90 deg');
    expect(inspect(volume('10 yd3'))).toBe('10 yd3');
    expect(inspect(length('3 ft').times(length('3 ft')))).toBe('0.836127… m2');
    expect(inText(length('1 in'))).toBe('1 in');
    expect(String(length('1/3 in'))).toBe(`0.${'3'.repeat(40)} in`);
    expect(length(`7' 3 5/8"`).toString()).toBe(`7' 3 5/8"`);
    expect(length(`7' 3 5/8"`).dividedBy(7).toString()).toBe(
      '12.51785714285714285714285714285714285714 in',
    );
  });

  test('keeps the unit in sums and shares, and only for printing', () => {
    const five = length('5 ft');
    expect(inText(five.plus(length('250 mm')))).toBe(
      '5.820209973753280839895013123359580052493 ft',
    );
    expect(inText(five.times(2).minus(length('1 ft')))).toBe('9 ft');
    expect(inText(five.negated().dividedBy(4).abs())).toBe('1.25 ft');
    expect(inText(sum([length('3 1/4 in'), length('1 in'), length('8 in')]))).toBe('12.25 in');
    const bare = volume('1 yd3').dividedBy(area('81 ft2'));
    expect(inText(bare)).toBe('0.1016 m');
    expect(inText(bare.plus(length('1 in')))).toBe('5 in');
    expect(five.toJSON()).toEqual({ value: '1.524', unit: 'm' });
    expect(five).toEqual(length('60 in'));
    expect(inText(fromJSON(five.toJSON()))).toBe('1.524 m');
    expect(inText(roundTo(length('5.03 ft'), length('1 in')))).toBe('5 ft');
  });

  test('is known across copies of the package by its mark, and read by its digits', () => {
    const inch = length('1/3 in');
    const foreign = {
      dimension: 'length',
      si: inch.si,
      [Symbol.for('settline.quantity')]: true,
      toJSON: () => inch.toJSON(),
    };
    expect(isQuantity(foreign)).toBe(true);
    expect(
      length('1 in')
        .plus(foreign as unknown as Length)
        .equals(length('1 1/3 in')),
    ).toBe(true);
    expect(isQuantity({ dimension: 'length' })).toBe(false);
    expect(isQuantity(null)).toBe(false);
  });

  test('too large for a float is a fault, not infinity', () => {
    let large = length('1e60', 'km');
    for (let i = 0; i < 5; i += 1) large = large.times('1e60');
    expectFault(() => large.toNumber('mm'), 'OUT_OF_RANGE');
  });

  test('forty unlike fractions added up and deducted again leave nothing', () => {
    const primes = Array.from({ length: 200 }, (_, k) => k + 2)
      .filter((n) => !Array.from({ length: n - 2 }, (_, k) => k + 2).some((d) => n % d === 0))
      .slice(0, 40);
    expect(primes.at(-1)).toBe(173);
    const parts = primes.map((p) => length(`1/${p}`, 'm'));
    const all = sum(parts);
    expect(fromJSON(all.toJSON())).toEqual(all);
    expect(parts.reduce((rest, part) => rest.minus(part), all)).toEqual(length('0 m'));
  });

  test('digits do not pile up without end', () => {
    let third = length('1/3 in');
    for (let i = 0; i < 500; i += 1) third = third.times('1/7').times('7.0000001');
    expect(third.to('in').toNumber()).toBeCloseTo((1 / 3) * 1.0000000142857143 ** 500, 12);
    expect(fromJSON(third.toJSON()).dimension).toBe('length');
  });
});
