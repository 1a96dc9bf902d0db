import { describe, expect, test } from 'vitest';
import { designEsals, serviceLife } from 'settline/structure';
import { expectFault, faultsOf } from '../faults.js';
import { formulaOf } from '../formula-of.js';

describe('traffic of a day', () => {
  const axles = [
    { name: 'delivery vans', perDay: 12, factor: '0.05' },
    { name: 'refuse lorry', perDay: '0.2', factor: '1.5' },
  ];

  test('the sum, and what each kind does', () => {
    const day = designEsals({ axles, years: 1 });
    expect(day.perDay).toBe(0.9); // 0.6 + 0.3
    expect(day.axles.map(({ esals }) => esals)).toEqual([0.6, 0.3]);
    expect(day.axles[1]).toEqual({ name: 'refuse lorry', perDay: 0.2, factor: 1.5, esals: 0.3 });
    expect(formulaOf(day.working[0])).toBe('E = sum(n[i] * f[i])');
    expect(day.working[0]?.result.value).toBe(0.9);
    expect(day.firstYear).toBe(328.5);
    expect(day.working).toHaveLength(3);
  });

  test('passes counted as such need no axles', () => {
    const counted = designEsals({ perDay: '0.9', years: 1 });
    expect(counted).toMatchObject({ perDay: 0.9, axles: [], firstYear: 328.5 });
    expect(counted.working).toHaveLength(2);
  });

  test('either axles or passes, and no second fault for a misspelt one', () => {
    const codes = (options: object) =>
      faultsOf(() => designEsals(options as never)).map(
        ({ code, path }) => `${code} ${path.join('.')}`,
      );
    expect(codes({ years: 1 })).toEqual(['REQUIRED perDay']);
    expect(codes({ axles, perDay: 5, years: 1 })).toEqual(['CONFLICTING_FIELDS perDay']);
    expect(codes({ axle: axles, years: 1 })).toEqual(['UNKNOWN_FIELD axle']);
    expect(codes({ axles: [], years: 1 })).toEqual(['EMPTY_LIST axles']);
    expect(codes({ axles: 5, perDay: -1 })).toEqual([
      'WRONG_TYPE axles',
      'NOT_POSITIVE perDay',
      'REQUIRED years',
      'CONFLICTING_FIELDS perDay',
    ]);
  });

  test.each([
    ['perDay', -1, 'NEGATIVE'],
    ['perDay', 1e7, 'OUT_OF_RANGE'],
    ['factor', 1e5, 'OUT_OF_RANGE'],
    ['factor', undefined, 'REQUIRED'],
    ['name', ' ', 'EMPTY'],
  ] as const)('refuses %s %j', (field, value, code) => {
    const broken = [axles[0], { ...axles[1], [field]: value }];
    const issue = expectFault(() => designEsals({ axles: broken as never, years: 1 }), code);
    expect(issue.path).toEqual(['axles', 1, field]);
  });
});

describe('traffic over the life', () => {
  test('without growth, with every share', () => {
    const life = designEsals({
      perDay: 100,
      years: 10,
      days: 250,
      direction: '0.5',
      lane: '0.8',
    });
    expect(life).toMatchObject({ esals: 100_000, firstYear: 10_000, growthFactor: 10 });
    expect(life.working.map(formulaOf)).toEqual([
      'F = E * d * p * q * (1 + r)^b',
      'W = r == 0 ? F * n : F * ((1 + r)^n - 1) / r',
    ]);
  });

  test('with growth, before the opening too', () => {
    // (1.1^2 - 1) / 0.1 = 2.1, and 1.1^1 before
    const life = designEsals({ perDay: 10, years: 2, growth: '0.1', yearsBefore: 1 });
    expect(life).toMatchObject({ firstYear: 4015, growthFactor: 2.1, esals: 8431.5 });
    expect(formulaOf(life.working[1])).toContain('- 1) / r');
    // falling off by half: 1 + 0.5 + 0.25
    expect(designEsals({ perDay: 10, years: 3, growth: '-0.5' }).growthFactor).toBe(1.75);
    // a twentieth of a percent counts: 20 + 190 r + 1140 r^2 + 4845 r^3 + 15504 r^4
    const slow = designEsals({ perDay: 10, years: 20, growth: '0.0005' });
    expect(slow.growthFactor).toBeCloseTo(20.0952856066, 9);
  });

  test.each([
    ['perDay', 0, 'NOT_POSITIVE'],
    ['years', 101, 'OUT_OF_RANGE'],
    ['growth', 3, 'OUT_OF_RANGE'],
    ['growth', -0.6, 'OUT_OF_RANGE'],
    ['days', 367, 'OUT_OF_RANGE'],
    ['direction', 0, 'NOT_POSITIVE'],
    ['direction', 1.1, 'OUT_OF_RANGE'],
    ['lane', 1.1, 'OUT_OF_RANGE'],
    ['yearsBefore', -1, 'NEGATIVE'],
    ['yearsBefore', Infinity, 'NOT_FINITE'],
  ] as const)('refuses %s %j', (field, value, code) => {
    const options = { perDay: 100, years: 10, [field]: value };
    expect(expectFault(() => designEsals(options), code).path).toEqual([field]);
  });
});

describe('service life', () => {
  test('turns the traffic over the life round', () => {
    const { esals, firstYear } = designEsals({ perDay: 80, years: 17, growth: '0.035' });
    expect(serviceLife({ esals, firstYear, growth: '0.035' }).years).toBeCloseTo(17, 12);
    const { cautions, working } = serviceLife({ esals, firstYear });
    expect(cautions.map(({ id }) => id)).toEqual(['pavement-design']);
    expect(formulaOf(working[0])).toMatch(/^n = r == 0 \? W \/ F : /);
    expect(serviceLife({ esals: 8431.5, firstYear: 4015, growth: '0.1' }).years).toBeCloseTo(2, 12);
  });

  test('traffic that falls off may never use it up', () => {
    // 1 + 0.5 + 0.25 ... stays below 2 first years
    const life = serviceLife({ esals: 200, firstYear: 100, growth: '-0.5' });
    expect(life.years).toBeNull();
    expect(life.working[0]?.result.value).toBe('no end');
    expect(serviceLife({ esals: 175, firstYear: 100, growth: '-0.5' }).years).toBeCloseTo(3, 12);
  });

  test('refusals', () => {
    expectFault(() => serviceLife({ esals: 0, firstYear: 1 }), 'NOT_POSITIVE');
    expectFault(() => serviceLife({ esals: 1, firstYear: 0 }), 'NOT_POSITIVE');
    expectFault(() => serviceLife({ esals: 1, firstYear: 1, growth: 2 }), 'OUT_OF_RANGE');
  });
});
