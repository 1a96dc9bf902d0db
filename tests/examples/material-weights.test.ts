// Invented worked examples: figures of our own, worked out by hand, by a closed form or by a second
// program. No publication stands behind them.
import { expect, test } from 'vitest';

import { orderPacks } from 'settline/materials';
import { baseOrder } from 'settline/volumes';

test('9 ft by 9 ft by 4 in is one yard, and one yard is ordered', () => {
  // common practice, no source
  const order = baseOrder({
    area: '81 ft2',
    thickness: '4 in',
    compactedPerLoose: 1,
    compactedDryDensity: '3700 lb/yd3',
  });
  expect(order.compacted.to('yd3').toString()).toBe('1');
  const packs = [{ name: 'yard', holds: '1 yd3' }];
  expect(orderPacks({ volume: order.loose.volume, packs }).count).toBe(1);
});
