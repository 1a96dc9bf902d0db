import { expect, expectTypeOf, test } from 'vitest';
import { baseOrder, beddingSand, orderPacks, unitCount } from 'settline/materials';
import type { Mass, Volume } from 'settline/units';
import { expectFault } from '../faults.js';

const layer = { area: '9 m2', thickness: '100 mm', compactedPerLoose: 0.8 } as const;

test('with a density there are masses, without one there may be none', () => {
  expectTypeOf(
    baseOrder({ ...layer, compactedDryDensity: '2 t/m3' }).dryMass,
  ).toEqualTypeOf<Mass>();
  expectTypeOf(baseOrder(layer).dryMass).toEqualTypeOf<Mass | null>();
  expectTypeOf(
    beddingSand({ ...layer, looseDryDensity: '1.5 t/m3' }).deliveredMass,
  ).toEqualTypeOf<Mass>();
  const bare = beddingSand(layer);
  expectTypeOf(bare.deliveredMass).toEqualTypeOf<Mass | null>();
  expect(bare.deliveredMass).toBeNull();
});

test('an order has the measure of its need', () => {
  const packs = [{ name: 'load', holds: '8 m3' }];
  expectTypeOf(orderPacks({ volume: '9 m3', packs }).ordered).toEqualTypeOf<Volume>();
  expectTypeOf(orderPacks({ units: 9, packs: [{ name: 'layer', holds: 8 }] }).ordered).toBeNumber();
});

test('a misspelt field does not compile, and is refused', () => {
  const unit = { length: '200 mm', width: '100 mm' } as const;
  expectFault(
    // @ts-expect-error breakage is meant
    () => unitCount({ area: '9 m2', unit, joint: '3 mm', breakages: 0.02 }),
    'UNKNOWN_FIELD',
  );
  // @ts-expect-error waste is meant
  expectFault(() => baseOrder({ ...layer, wast: 0.1 }), 'UNKNOWN_FIELD');
});
