// Which kinds of quantity multiply and divide, and what comes of it.
import { describe, expect, test } from 'vitest';
import {
  area,
  DIMENSIONS,
  fromNumber,
  isQuantity,
  length,
  max,
  min,
  SI_UNIT,
  volume,
  type AnyQuantity,
  type Dimension,
  type Length,
} from 'settline/units';
import { expectFault } from '../faults.js';

const PRODUCTS: readonly (readonly [Dimension, Dimension, Dimension])[] = [
  ['length', 'length', 'area'],
  ['length', 'area', 'volume'],
  ['length', 'slope', 'length'],
  ['length', 'line-weight', 'force'],
  ['area', 'pressure', 'force'],
  ['volume', 'density', 'mass'],
  ['time', 'speed', 'length'],
  ['time', 'flow', 'volume'],
];

/** An amount of SI units; its methods take whatever they get. */
const amount = (dimension: Dimension, size: number) =>
  fromNumber(size, SI_UNIT[dimension]) as unknown as Length;
const sized = (value: unknown): string =>
  isQuantity(value) ? `${value.si.toString()} ${value.dimension}` : String(value);

describe('every pair of kinds', () => {
  test.each(DIMENSIONS.flatMap((a) => DIMENSIONS.map((b) => [a, b] as const)))(
    '%s and %s',
    (a, b) => {
      const [first, second] = [amount(a, 6), amount(b, 4) as never];
      const product = PRODUCTS.find(([x, y]) => (x === a && y === b) || (x === b && y === a))?.[2];
      if (product === undefined) {
        const issue = expectFault(() => first.times(second), 'NO_KNOWN_PRODUCT');
        expect(issue.params).toEqual({ first: a, second: b });
        expect(issue.message).toContain(`${a} times ${b} is not a quantity this library has`);
      } else {
        expect(sized(first.times(second))).toBe(`24 ${product}`);
      }

      const quotient = PRODUCTS.flatMap(([x, y, of]) =>
        of !== a ? [] : y === b ? [x] : x === b ? [y] : [],
      );
      if (a === b) {
        expect(sized(first.dividedBy(second))).toBe('1.5');
      } else if (quotient[0] === undefined) {
        const issue = expectFault(() => first.dividedBy(second), 'NO_KNOWN_PRODUCT');
        expect(issue.params).toEqual({ first: a, second: b });
        expect(issue.message).toContain(`${a} divided by ${b} is not a quantity`);
      } else {
        expect(sized(first.dividedBy(second))).toBe(`1.5 ${quotient[0]}`);
      }
    },
  );
});

test.each(DIMENSIONS)('what is not a %s', (dimension) => {
  const [own, article] = [amount(dimension, 1), /^[aeiou]/.test(dimension) ? 'an' : 'a'];
  for (const [other, got, type] of [
    [5, '5', 'number'],
    ['5 ft', '"5 ft"', 'string'],
    [null, 'null', 'object'],
    [undefined, 'undefined', 'undefined'],
    [true, 'true', 'boolean'],
    [7n, 'bigint', 'bigint'],
    [[own], 'a list', 'object'],
    [{}, 'an object', 'object'],
    [own.si, '1', 'object'],
    [
      amount(dimension === 'area' ? 'flow' : 'area', 1),
      dimension === 'area' ? 'a flow' : 'an area',
    ],
  ] as const)
    for (const run of [
      () => own.plus(other as never),
      () => own.minus(other as never),
      () => own.compare(other as never),
    ]) {
      const issue = expectFault(run, 'DIMENSION_MISMATCH');
      expect(issue.message).toBe(`expected ${article} ${dimension}, got ${got}`);
      const kind = type ?? (dimension === 'area' ? 'flow' : 'area');
      expect(issue.params).toEqual({ expected: dimension, got: kind });
    }
  expect(expectFault(() => own.dividedBy(0), 'DIVISION_BY_ZERO').message).toBe(
    `${dimension} divided by zero`,
  );
  expect(expectFault(() => Number(own), 'OPERATOR_ON_QUANTITY').params).toEqual({ dimension });
});

test('of equal quantities the first is the least, and the most', () => {
  const [foot, inches] = [length('1 ft'), length('12 in')];
  for (const of of [min, max]) {
    expect(of([foot, inches])).toBe(foot);
    expect(of([inches, foot])).toBe(inches);
  }
});

test('the opposite twice is the same, and no zero is below zero', () => {
  for (const text of ['1/3 in', '5 ft', '0 m']) {
    const one = length(text);
    expect(one.negated().negated()).toEqual(one);
    expect(one.abs()).toBe(one);
    expect(one.negated().abs()).toEqual(one);
    expect(one.minus(one).isZero()).toBe(true);
    expect(one.minus(one).negated().toNumber('m')).toBe(0);
    expect(one.isZero()).toBe(text === '0 m');
  }
});

test('a very small quotient is exact', () => {
  const depth = volume('1 mm3').dividedBy(area('163.84 mm2'));
  expect(depth).toStrictEqual(length('0.000006103515625 m'));
  expect(depth.equals(length('0.006103515625 mm'))).toBe(true);
  expect(depth.plus(length('1 m')).toJSON()).toEqual({ value: '1.000006103515625', unit: 'm' });
});

/** A quantity of another copy of the package. */
const foreign = (of: AnyQuantity, json: unknown): AnyQuantity =>
  ({
    dimension: of.dimension,
    [Symbol.for('settline.quantity')]: true,
    toJSON: () => json,
  }) as unknown as AnyQuantity;

describe('a quantity of another copy', () => {
  const third = length('1/3 in');

  test('is taken in every place', () => {
    const other = foreign(third, third.toJSON()) as Length;
    expect(third.compare(other)).toBe(0);
    expect(third.minus(other).isZero()).toBe(true);
    expect(third.times(other).equals(third.times(third))).toBe(true);
    expect(third.dividedBy(other).toString()).toBe('1');
    // how it was written is not known here
    expect(max([other]).toString()).toBe(`${third.si.toString()} m`);
    expect(min([other, third]).dividedBy(2).times(2)).toEqual(third);
  });

  test.each([
    [null, 'WRONG_TYPE'],
    ['5 ft', 'WRONG_TYPE'],
    [{ unit: 'm' }, 'WRONG_TYPE'],
    [{ value: 5, unit: 'm' }, 'WRONG_TYPE'],
    [{ value: '5', unit: 'kg' }, 'DIMENSION_MISMATCH'],
    [{ value: '5' }, 'UNIT_UNKNOWN'],
    [{ value: 'x', unit: 'm' }, 'NOT_A_NUMBER'],
  ] as const)('that is written as %j is none', (json, code) => {
    const issue = expectFault(() => third.plus(foreign(third, json) as Length), code);
    if (code === 'WRONG_TYPE')
      expect(issue.message).toBe('expected a quantity, got an object that only looks like one');
  });
});
