import { expect, test } from 'vitest';
import { convert, formatLength, length, slope } from 'settline/units';
import { expectPrinted } from '../printed.js';

test('1.43 ft is 1 ft 5 1/8 in to the nearest eighth', () => {
  // Decimal feet to feet-inches-eighths, construction grades article. Read: 5.16 in, 1.28 eighths.
  const difference = length('101.43 ft').minus(length('100 ft'));
  expect(difference.to('in').toString()).toBe('17.16');
  expect(formatLength(difference, { as: 'ft-in', nearest: '1/8 in' })).toBe(`1' 5 1/8"`);
});

test('12 ft at a quarter inch per foot falls 3 in', () => {
  // Masonry and Concrete (handbook), p. 285. Read.
  expect(length('12 ft').times(slope('1/4 in per ft')).to('in').toString()).toBe('3');
});

test('1:60 and 8 m at 1:40', () => {
  // Lines, levels and gradients training slides, slides 7 and 11. Read: 16.6 mm/m is truncated.
  const sixty = slope('1:60').toNumber('mm/m');
  expectPrinted(Math.floor(sixty * 10) / 10, '16.6');
  expectPrinted(sixty, '16.6667');
  expect(length('8 m').times(slope('1:40')).to('m').toString()).toBe('0.2');
});

test('the survey foot', () => {
  // 85 FR 62698 (5 October 2020): 1200/3937 m. NIST Handbook 44, Appendix C: 2 parts in a million.
  expect(convert(3937, 'ft-us', 'm').toString()).toBe('1200');
  expect(convert(1_000_000, 'ft', 'ft-us').toString()).toBe('999998');
});

test('printed factors of NIST SP 811, Appendix B.8', () => {
  // read in a transcription of B.8 and B.9; the figures in bold there are exact
  expectPrinted(convert(1, 'psi', 'Pa').toNumber() / 1000, '6.894757');
  expectPrinted(convert(1, 'lb/ft3', 'kg/m3').toNumber() / 10, '1.601846');
  expectPrinted(convert(1, 'ton-us/yd3', 'kg/m3').toNumber() / 1000, '1.186553');
  expectPrinted(convert(1, 'lb/yd3', 'kg/m3').toNumber() * 10, '5.932764');
  expect(convert(1, 'lbf', 'N').toString()).toBe('4.4482216152605');
  expect(convert(1, 'gal-us', 'l').toString()).toBe('3.785411784');
});
