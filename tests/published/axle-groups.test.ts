import { describe, expect, test } from 'vitest';
import { axleGroupLimit, checkAxleGroups } from 'settline/site';
import { AXLE_LIMITS } from 'settline/sources';

const pounds = (axles: number, feet: number) =>
  axleGroupLimit({ axles, spread: { value: feet, unit: 'ft' } })
    .limit.to('lb')
    .toString();

describe('California Vehicle Code 35551, table as printed in Assembly Bill 1953 (2023-2024). Read', () => {
  // the table caps groups of two axles at 34,000 (to 8 ft) and 40,000 lb (two single axles), and
  // longer groups at what their inner groups may carry; the rows here are those of the formula alone
  test('2 axles, 9 and 10 ft', () => {
    expect([pounds(2, 9), pounds(2, 10)]).toEqual(['39000', '40000']);
  });

  test('3 axles, 9 to 28 ft: exact halves of 500 lb are printed down', () => {
    const printed = [
      42500, 43500, 44000, 45000, 45500, 46500, 47000, 48000, 48500, 49500, 50000, 51000, 51500,
      52500, 53000, 54000, 54500, 55500, 56000, 57000,
    ];
    expect(printed.map((_, index) => pounds(3, 9 + index))).toEqual(printed.map(String));
  });

  test('4 axles, 12 to 28 ft', () => {
    const printed = [
      50000, 50500, 51500, 52000, 52500, 53500, 54000, 54500, 55500, 56000, 56500, 57500, 58000,
      58500, 59500, 60000, 60500,
    ];
    expect(printed.map((_, index) => pounds(4, 12 + index))).toEqual(printed.map(String));
  });
});

describe('bridge formula explanation (highway agency), quoted in a copy. Read', () => {
  test('two axles 4 ft apart: 34,000 lb', () => {
    expect(pounds(2, 4)).toBe('34000');
  });

  test('tandems 36 to 38 ft apart: 66,000 to 67,500 lb by the formula, 68,000 by the exception', () => {
    expect([pounds(4, 36), pounds(4, 38)]).toEqual(['66000', '67500']);
    const { groups } = checkAxleGroups({
      axles: ['0 ft', '4 ft', '32 ft', '36 ft'].map((position, k) => ({ id: `${k}`, position })),
      caps: 'us-interstate',
    });
    const four = groups.find(({ axles }) => axles.length === 4);
    expect(four?.limit?.to('lb').toString()).toBe('68000');
  });
});

test('FHWA questions and answers, 23 CFR 658.17: 20,000, 34,000, 80,000 lb; 40 and 96 in. Read', () => {
  const { single, tandem, gross, singleSpread, tandemSpread } = AXLE_LIMITS['us-interstate'];
  expect([single.value, tandem.value, gross.value]).toEqual(['20000', '34000', '80000']);
  expect([singleSpread.value, tandemSpread.value]).toEqual(['40', '96']);
  expect([single.status, tandem.status, gross.status]).toEqual(['read', 'read', 'read']);
});
