import { describe, expect, test } from 'vitest';
import { relativeCompaction } from 'settline/checks';
import { testRefusals } from '../refusals.js';

const spot = { wetDensity: '2200 kg/m3', moisture: '0.1', maximumDryDensity: '2000 kg/m3' };

describe('relativeCompaction', () => {
  test('by pencil', () => {
    const found = relativeCompaction({ ...spot, optimumMoisture: 0.125 });
    expect(found.dryDensity.to('kg/m3').toString()).toBe('2000');
    expect(found.percent).toBe(100);
    expect(found.waterToAdd?.to('kg/m3').toString()).toBe('50');
    expect(found.suspect).toBe(false);
  });

  test('a layer that is wet of the optimum has to lose water', () => {
    const found = relativeCompaction({ ...spot, optimumMoisture: 0.08 });
    expect(found.waterToAdd?.to('kg/m3').toString()).toBe('-40');
    expect(relativeCompaction(spot).waterToAdd).toBeNull();
  });

  test('more than 105 % says that the reference is wrong, 105 % does not', () => {
    const at105 = { ...spot, wetDensity: '2310 kg/m3' };
    expect(relativeCompaction(at105)).toMatchObject({ percent: 105, suspect: false });
    expect(relativeCompaction({ ...spot, wetDensity: '2310.0001 kg/m3' }).suspect).toBe(true);
  });

  test('shows its working', () => {
    const { working } = relativeCompaction(spot);
    expect(working.map(({ result }) => result.symbol)).toEqual(['d', 'R']);
  });
});

testRefusals(relativeCompaction, spot, [
  ['wetDensity', undefined, 'REQUIRED'],
  ['wetDensity', '0 kg/m3', 'NOT_POSITIVE'],
  ['wetDensity', '6 t/m3', 'OUT_OF_RANGE'],
  ['moisture', 11, 'OUT_OF_RANGE'],
  ['moisture', -0.1, 'NEGATIVE'],
  ['maximumDryDensity', '2000 kg', 'UNIT_UNKNOWN'],
  ['optimumMoisture', 12, 'OUT_OF_RANGE'],
]);
