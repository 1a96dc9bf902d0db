import { describe, expect, test } from 'vitest';
import { soilFactors, stateVolume, toState } from 'settline/volumes';
import { SOIL_NAMES } from '../../src/sources/soil-state-factors.js';
import { expectPrinted } from '../printed.js';

test('each row says how far it can be traced', () => {
  const statuses = SOIL_NAMES.map((soil) => soilFactors(soil).status);
  expect(statuses).toEqual(['read', 'memory', 'memory', 'memory']);
});

describe('FM 5-434 Earthmoving Operations, Table 1-1: from memory, but for the first two of sand', () => {
  // bank to loose, bank to compacted, loose to bank, loose to compacted, compacted to bank,
  // compacted to loose: two independent factors a row, the other four follow to the printed 0.01
  const table = {
    sand: ['1.11', '0.95', '0.90', '0.86', '1.05', '1.17'],
    loam: ['1.25', '0.90', '0.80', '0.72', '1.11', '1.39'],
    clay: ['1.43', '0.90', '0.70', '0.63', '1.11', '1.59'],
    'blasted-rock': ['1.50', '1.30', '0.67', '0.87', '0.77', '1.15'],
  } as const;
  const turns = [
    ['bank', 'loose'],
    ['bank', 'compacted'],
    ['loose', 'bank'],
    ['loose', 'compacted'],
    ['compacted', 'bank'],
    ['compacted', 'loose'],
  ] as const;

  test.each(SOIL_NAMES)('%s', (soil) => {
    turns.forEach(([from, to], index) => {
      const turned = toState(stateVolume('1 yd3', from), to, soilFactors(soil));
      expectPrinted(turned.toNumber('yd3'), table[soil][index] ?? '');
    });
  });
});
