import { describe, expect, test } from 'vitest';
import { orderPacks } from 'settline/materials';
import { expectFault } from '../faults.js';
import { testRefusals } from '../refusals.js';
import { formulaOf } from '../formula-of.js';

const packs = [
  { name: 'layer', holds: 40 },
  { name: 'pallet', holds: 10 },
  { name: 'truck', holds: 18 },
] as const;

describe('units by layer, pallet and truck', () => {
  test('exactly full is full, one more is one layer more', () => {
    const full = orderPacks({ units: 3200, packs });
    expect(full).toMatchObject({
      need: 3200,
      count: 80,
      ordered: 3200,
      surplus: 0,
      surplusShare: 0,
    });
    expect(full.load).toEqual([{ name: 'pallet', count: 8 }]);
    const more = orderPacks({ units: 3201, packs });
    expect(more).toMatchObject({ ordered: 3240, surplus: 39 });
    expect(more.load).toEqual([
      { name: 'pallet', count: 8 },
      { name: 'layer', count: 1 },
    ]);
    expect(more.surplusShare).toBeCloseTo(39 / 3201, 15);
  });

  test('each pack: how many it takes, how many are full, what rounding to it would make', () => {
    const { packs: counts } = orderPacks({ units: 3129, packs });
    expect(counts).toEqual([
      { name: 'layer', holds: 40, count: 79, full: 79, rounded: { ordered: 3160, surplus: 31 } },
      { name: 'pallet', holds: 400, count: 8, full: 7, rounded: { ordered: 3200, surplus: 71 } },
      { name: 'truck', holds: 7200, count: 1, full: 0, rounded: { ordered: 7200, surplus: 4071 } },
    ]);
  });

  test('sold by the pallet, with a smallest order', () => {
    const pallets = orderPacks({ units: 3129, packs, soldBy: 'pallet' });
    expect(pallets).toMatchObject({ count: 8, ordered: 3200, surplus: 71, isMinimumOrder: false });
    const least = orderPacks({ units: 3129, packs, soldBy: 'pallet', minimum: 10 });
    expect(least).toMatchObject({ ordered: 4000, surplus: 871, isMinimumOrder: true });
    expect(orderPacks({ units: 3129, packs, soldBy: 'pallet', minimum: 8 }).isMinimumOrder).toBe(
      false,
    );
    const none = orderPacks({ units: 0, packs, minimum: 10 });
    expect(none).toMatchObject({ ordered: 0, surplusShare: 0, isMinimumOrder: false, load: [] });
  });

  test('there is no part of a unit', () => {
    const { path } = expectFault(() => orderPacks({ units: 0.5, packs }), 'NOT_WHOLE');
    expect(path).toEqual(['units']);
    expectFault(() => orderPacks({ units: '3160.0000000000000000001', packs }), 'NOT_WHOLE');
  });
});

describe('amounts', () => {
  test('bags of a pallet', () => {
    const bags = [
      { name: 'bag', holds: '22.7 kg' },
      { name: 'pallet', holds: 56 },
    ];
    const order = orderPacks({ mass: '261.7 kg', packs: bags });
    expect(order.ordered.to('kg').toString()).toBe('272.4');
    expect(order.surplus.to('kg').toString()).toBe('10.7');
    expect(order.load).toEqual([{ name: 'bag', count: 12 }]);
    expect(orderPacks({ mass: '272.4 kg', packs: bags }).surplus.isZero()).toBe(true);
    expect(order.working[0]).toMatchObject({
      formula: 'Q = max(ceil(q / p), q / p > 0 ? m : 0) * p',
    });
  });

  test('a truck that brings any part, but not less than its smallest load', () => {
    const yards = (volume: string, more = {}) =>
      orderPacks({
        volume,
        packs: [{ name: 'yard', holds: '1 yd3' }],
        sellsPartPacks: true,
        ...more,
      });
    expect(yards('4.3 yd3').ordered.to('yd3').toString()).toBe('4.3');
    const least = yards('4.3 yd3', { minimum: '5.5' });
    expect(least.ordered.to('yd3').toString()).toBe('5.5');
    expect(least.count).toBe(6);
    expect(least.isMinimumOrder).toBe(true);
    expect(formulaOf(least.working[0])).toBe('Q = max(q / p, q / p > 0 ? m : 0) * p');
    expect(yards('0 yd3', { minimum: 5 }).ordered.isZero()).toBe(true);
  });

  test('exactly one yard is one, a hair over it is two, nothing is none', () => {
    const yard = [{ name: 'yard', holds: '1 yd3' }];
    const order = (value: string, unit: 'ft3' | 'yd3') =>
      orderPacks({ volume: { value, unit }, packs: yard });
    expect(order('27', 'ft3').count).toBe(1);
    expect(order('27.0000000000000000000001', 'ft3').count).toBe(2);
    expect(order('0', 'yd3').count).toBe(0);
    const { count, ordered, surplus } = order('2.25', 'yd3');
    expect(count).toBe(3);
    expect([ordered.to('yd3').toString(), surplus.to('yd3').toString()]).toEqual(['3', '0.75']);
  });

  test.each([
    ['1 m3', '0 m3', 'NOT_POSITIVE'],
    ['-1 m3', '1 m3', 'NEGATIVE'],
    ['1 m3', { value: '1e-40', unit: 'm3' }, 'OUT_OF_RANGE'],
  ] as const)('refuses %s in packs of %s', (need, holds, code) => {
    expectFault(() => orderPacks({ volume: need, packs: [{ name: 'pack', holds }] }), code);
  });

  test('rolls by area and pieces by length', () => {
    const roll = [{ name: 'roll', holds: '419.1 m2' }];
    expect(orderPacks({ area: '101.3 m2', packs: roll }).packs[0]?.count).toBe(1);
    const piece = [{ name: 'piece', holds: '8 ft' }];
    expect(orderPacks({ length: '24 ft', packs: piece }).packs[0]?.count).toBe(3);
    expect(orderPacks({ length: '24.001 ft', packs: piece }).packs[0]?.count).toBe(4);
  });

  test('three tenths of a load in tenths are three, not four', () => {
    const tenth = [{ name: 'tenth', holds: '0.1 m3' }];
    expect(orderPacks({ volume: '0.3 m3', packs: tenth }).packs[0]?.count).toBe(3);
  });
});

describe('refusals', () => {
  const valid = { units: 10, packs };
  testRefusals(orderPacks, valid, [
    ['units', undefined, 'REQUIRED'],
    ['units', -1, 'NEGATIVE'],
    ['units', 'ten', 'NOT_A_NUMBER'],
    ['mass', '1 kg', 'CONFLICTING_FIELDS'],
    ['units', 1e10, 'OUT_OF_RANGE'],
    ['packs', [], 'EMPTY_LIST'],
    ['packs.0.holds', 0, 'NOT_POSITIVE', 'packs[0].holds'],
    ['packs.0.holds', 1.5, 'NOT_WHOLE', 'packs[0].holds'],
    ['packs.1.holds', 2.5, 'NOT_WHOLE', 'packs[1].holds'],
    ['packs.1.name', 'layer', 'DUPLICATE_ID', 'packs[1].name'],
    ['packs.1.name', '', 'EMPTY', 'packs[1].name'],
    ['soldBy', 'crate', 'UNKNOWN_ID'],
    ['minimum', 1.5, 'NOT_WHOLE'],
    ['minimum', -1, 'NEGATIVE'],
    ['sellsPartPacks', 'yes', 'WRONG_TYPE'],
  ]);

  test('a bare amount, and more packs than can be counted', () => {
    const bag = [{ name: 'bag', holds: 25 as never }];
    expectFault(() => orderPacks({ mass: '1 kg', packs: bag }), 'UNIT_MISSING');
    const grain = [{ name: 'grain', holds: { value: '1e-20', unit: 'kg' } as const }];
    expectFault(() => orderPacks({ mass: '1 kg', packs: grain }), 'CAPACITY_EXCEEDED');
  });
});
