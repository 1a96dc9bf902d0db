import { describe, expect, test } from 'vitest';
import { angle, angleOfSlope, length, slope, slopeOfAngle } from 'settline/units';
import { expectFault, expectFaultOrReason } from '../faults.js';

describe('slopes as people write them', () => {
  test.each([
    ['2%', '0.02'],
    ['2 %', '0.02'],
    ['-1.5 percent', '-0.015'],
    ['2 1/2 %', '0.025'],
    ['1:50', '0.02'],
    ['1 : 50', '0.02'],
    ['2:1', '0.5'],
    ['1.5:1', '2/3'],
    ['1:1', '1'],
    ['1/4 in per ft', '1/48'],
    ['1/4 in/ft', '1/48'],
    ['1/4" per foot', '1/48'],
    ['1/4"/ft', '1/48'],
    ['6 in in 10 ft', '0.05'],
    ['3 in per 12 ft', '1/48'],
    ['20 mm/m', '0.02'],
    ['20 mm per m', '0.02'],
    ['-20 mm/m', '-0.02'],
    ['1 in 48', '1/48'],
    ['0.02 ratio', '0.02'],
    ['+2%', '0.02'],
    ['0%', '0'],
    ['2 per cent', '0.02'],
    ['2.5  PER  CENT', '0.025'],
    ['1/4" / ft', '1/48'],
    ['1/4 in / ft', '1/48'],
    ['20 mm / m', '0.02'],
    ['20 mm /m', '0.02'],
    ['3 in / 12 ft', '1/48'],
    ['1 in 12 ft', '1/144'],
    ['1/4 in 1 ft', '1/48'],
    [`3 in 12'`, '1/48'],
    ['1 in 1', '1'],
    ['-1 in 48', '-1/48'],
  ])('%s', (text, value) => {
    expect(slope(text).equals(slope(value, 'ratio'))).toBe(true);
  });

  test('two percent is not two degrees', () => {
    expect(slope('2 deg').to('percent').toFixed(6)).toBe('3.492077');
    expect(slope('45°').to('percent').toFixed(30)).toBe(`100.${'0'.repeat(30)}`);
  });

  test('a quarter inch per foot is exactly 1:48', () => {
    expect(slope('1/4 in per ft').equals(slope('1:48'))).toBe(true);
    expect(slope('1/4 in per ft').compare(slope('2%'))).toBe(1);
  });

  test.each([
    ['2', 'UNIT_MISSING'],
    ['', 'EMPTY'],
    ['%', 'NO_NUMBER'],
    ['3:4', 'SLOPE_AMBIGUOUS'],
    ['1:0', 'ZERO_DENOMINATOR'],
    ['0:1', 'ZERO_DENOMINATOR'],
    ['1:', 'NO_NUMBER'],
    ['1:50:2', 'BAD_CHARACTER'],
    ['2 steep', 'UNIT_UNKNOWN'],
    ['2 in per furlong', 'UNIT_UNKNOWN'],
    ['20 mm/M', 'CASE'],
    ['3 in per 0 ft', 'ZERO_DENOMINATOR'],
    ['- 2%', 'SIGN_SPACE'],
    ['2,5 %', 'COMMA'],
    ['x'.repeat(200), 'TOO_LONG'],
    ['90 deg', 'OUT_OF_RANGE'],
    ['0.02:1', 'RATIO_BELOW_ONE'],
    ['.5:1', 'RATIO_BELOW_ONE'],
    ['1:0.02', 'RATIO_BELOW_ONE'],
    ['10 in 1', 'RATIO_BELOW_ONE'],
    ['1 in 0.02', 'RATIO_BELOW_ONE'],
    ['0.02 in 1', 'RATIO_BELOW_ONE'],
    ['3 in 4', 'SLOPE_AMBIGUOUS'],
    ['0 in 4', 'ZERO_DENOMINATOR'],
    ['1 in 0', 'ZERO_DENOMINATOR'],
    ['1 in 12 m', 'SLOPE_AMBIGUOUS'],
    ['2 per', 'UNIT_UNKNOWN'],
    ['2 per cent of it', 'NO_NUMBER'],
    ['11/2 %', 'IMPROPER_FRACTION'],
    ['1 in per 11/2 ft', 'IMPROPER_FRACTION'],
  ] as const)('refuses %s', (text, what) => {
    expectFaultOrReason(() => slope(text), what);
  });
});

test.each([
  ['0.02:1', '2% (rise to run) or 5000% (run to rise)?'],
  ['.5:1', '50% (rise to run) or 200% (run to rise)?'],
  ['1 in 0.02', '5000% (rise to run) or 2% (run to rise)?'],
  ['10 in 1', '1000% (rise to run) or 10% (run to rise)?'],
  ['3:4', '75% (rise to run) or 133.3% (run to rise)?'],
])('both readings of %s are told', (text, readings) => {
  expect(expectFault(() => slope(text), 'TEXT_UNREADABLE').message).toContain(readings);
});

test('a fault in a part has its place in the whole', () => {
  expect(expectFault(() => slope('3 in per 1 1 ft'), 'TEXT_UNREADABLE').params).toMatchObject({
    reason: 'TWO_NUMBERS',
    position: 11,
  });
});

describe('slope and angle', () => {
  test('there and back', () => {
    const back = slopeOfAngle(angleOfSlope(slope('2%')));
    expect(back.to('percent').minus(2).abs().lt('1e-36')).toBe(true);
    expect(slopeOfAngle(angle('-45 deg')).to('ratio').toFixed(10)).toBe('-1.0000000000');
  });

  test('steepest angle', () => {
    expectFault(() => slopeOfAngle(angle('-90 deg')), 'OUT_OF_RANGE');
  });
});

test('a slope of a run is a rise', () => {
  expect(length('10 m').times(slope('2%')).to('mm').toString()).toBe('200');
});
