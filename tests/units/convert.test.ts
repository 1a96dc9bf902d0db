import { describe, expect, test } from 'vitest';
import { convert, type Unit } from 'settline/units';
import { expectFault } from '../faults.js';

describe('convert', () => {
  test('gives 40 digits, exact where the result ends', () => {
    expect(convert('1', 'yd3', 'ft3').toString()).toBe('27');
    expect(convert(1, 'in', 'mm').toString()).toBe('25.4');
    expect(convert(0.1, 'm', 'cm').toString()).toBe('10');
    expect(convert(1, 'ft', 'yd').toFixed()).toBe('0.3333333333333333333333333333333333333333');
  });

  test('takes digits as text and fractions', () => {
    expect(convert('1/3', 'yd', 'ft').toString()).toBe('1');
    expect(convert('-2.5e1', 'mm', 'cm').toString()).toBe('-2.5');
  });

  test.each([
    ['in', 'm2', 'DIMENSION_MISMATCH'],
    ['lb', 'lbf', 'DIMENSION_MISMATCH'],
    ['percent', 'deg', 'DIMENSION_MISMATCH'],
    ['inch', 'm', 'UNIT_UNKNOWN'],
    ['m', 'metre', 'UNIT_UNKNOWN'],
    ['ton', 'kg', 'UNIT_AMBIGUOUS'],
    ['toString', 'm', 'UNIT_UNKNOWN'],
    ['__proto__', 'm', 'UNIT_UNKNOWN'],
  ] as const)('refuses %s to %s', (from, to, code) => {
    expectFault(() => convert(1, from as Unit, to as never), code);
  });

  test.each([
    [Number.NaN, 'NOT_FINITE'],
    [Number.POSITIVE_INFINITY, 'NOT_FINITE'],
    ['', 'NOT_A_NUMBER'],
    ['NaN', 'NOT_A_NUMBER'],
    ['0x10', 'NOT_A_NUMBER'],
    ['1_000', 'NOT_A_NUMBER'],
    ['1,5', 'NOT_A_NUMBER'],
    [' 1', 'NOT_A_NUMBER'],
    ['1/0', 'DIVISION_BY_ZERO'],
    [1e300, 'OUT_OF_RANGE'],
    [1e-300, 'OUT_OF_RANGE'],
    ['9'.repeat(30_000), 'TOO_LONG'],
    ['9'.repeat(500), 'OUT_OF_RANGE'],
    [null, 'WRONG_TYPE'],
    [undefined, 'WRONG_TYPE'],
    [{}, 'WRONG_TYPE'],
    [true, 'WRONG_TYPE'],
  ] as const)('refuses the value %s', (value, code) => {
    expectFault(() => convert(value as never, 'm', 'mm'), code);
  });
});
