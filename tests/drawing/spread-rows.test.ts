import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { spreadRows } from '../../src/drawing/frame/spread-rows.js';
import { runs } from '../runs.js';

describe('rows moved apart', () => {
  test('stay where they are if they have room', () => {
    expect(spreadRows([10, 40, 90], { spacing: 20, from: 0, to: 100 })).toEqual([10, 40, 90]);
  });

  test('go apart about their middle, and stop at the ends', () => {
    expect(spreadRows([50, 50], { spacing: 20, from: 0, to: 100 })).toEqual([40, 60]);
    expect(spreadRows([2, 3], { spacing: 20, from: 0, to: 100 })).toEqual([0, 20]);
    expect(spreadRows([99, 100], { spacing: 20, from: 0, to: 100 })).toEqual([80, 100]);
  });

  test('keep order, spacing and ends', () => {
    const wishes = fc.array(fc.double({ min: 0, max: 400, noNaN: true }), {
      minLength: 1,
      maxLength: 40,
    });
    fc.assert(
      fc.property(wishes, (unsorted) => {
        const sorted = [...unsorted].sort((a, b) => a - b);
        const rows = spreadRows(sorted, { spacing: 18, from: 0, to: 400 });
        expect(rows).toHaveLength(sorted.length);
        expect(rows[0]).toBeGreaterThanOrEqual(0);
        expect(rows.at(-1)).toBeLessThanOrEqual(Math.max(400, (sorted.length - 1) * 18) + 1e-9);
        rows
          .slice(1)
          .forEach((row, k) => expect(row - (rows[k] ?? row)).toBeGreaterThan(18 - 1e-9));
      }),
      runs(300),
    );
  });
});
