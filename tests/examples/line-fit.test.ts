// Invented worked examples: figures of our own, worked out by hand, by a closed form or by a second
// program. No publication stands behind them.
import { expect, test } from 'vitest';
import { checkStakeLine } from 'settline/stakes';
import { expectPrinted } from '../printed.js';

test('offset of a point from the line of two others', () => {
  // computed by an independent script
  const line = checkStakeLine({
    stakes: [
      { id: 'A', x: '0 m', y: '0 m' },
      { id: 'Q', x: '6.2 m', y: '0.155 m' },
      { id: 'B', x: '15 m', y: '0.3 m' },
    ],
    tolerance: '10 mm',
    reference: 'ends',
  });
  expectPrinted(line.offsets[1]?.offset.toNumber('mm') ?? Number.NaN, '30.99');
  expectPrinted(line.offsets[1]?.station.toNumber('m') ?? Number.NaN, '6.2019');
  expect(line.moves).toHaveLength(1);
  expect(line.moves[0]?.direction).toBe('right');
});
