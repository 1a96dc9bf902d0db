import { describe, expect, test } from 'vitest';
import { pathText } from 'settline';
import { planJob } from 'settline/job';
import { cornerTable, readPointTable } from 'settline/tables';
import { cedarCourtJob } from '../../cedar-court.js';
import { faultsOf } from '../../faults.js';

const readSpots = (table: string) => readPointTable(table, { kind: 'spot-heights' });

describe('faults of a cell name its row and column', () => {
  test.each([
    ['a row that ends early', 'x [m],y [m],z [m]\n1,2', 'REQUIRED', 'z', 'the cell is empty'],
    ['no unit', 'x,y [m],z [m]\n1,2,3', 'UNIT_MISSING', 'x', '1 has no unit'],
    ['no number', 'x [m],y [m],z [m]\nfar,2,3', 'NOT_A_NUMBER', 'x', '"far" is not a number'],
    [
      'a length of an unknown unit, decimals with a comma',
      'x [m];y [m];z [m]\n1,5;2;3,5 perch',
      'UNIT_UNKNOWN',
      'z',
      'perch',
    ],
    ['a length too long', 'x [m],y [m],z [m]\n1,2,99999999 km', 'OUT_OF_RANGE', 'z', '99999999 km'],
  ])('%s', (_name, table, code, column, words) => {
    const faults = faultsOf(() => readSpots(table));
    expect(faults.map((one) => [one.code, pathText(one.path)])).toEqual([
      [code, `rows[0].${column}`],
    ]);
    expect(faults[0]?.message).toMatch(/^row 2, column "/);
    expect(faults[0]?.message).toContain(words);
  });
});

test('offsets are measured from two fixed points', () => {
  const plan = planJob(cedarCourtJob());
  const at = (x: number) => ({ x: `${x} m`, y: '0 m' });
  const codesOf = (fixed: readonly unknown[]) =>
    faultsOf(() => cornerTable(plan, { fixed } as never)).map(
      ({ code, path, message }) => `${code} ${pathText(path)}: ${message}`,
    );
  expect(codesOf([at(0)])).toEqual(['TOO_FEW fixed: 1 fixed point. Offsets are measured from two']);
  expect(codesOf([at(0), at(1), at(2)])).toEqual([
    'TOO_MANY fixed: 3 fixed points. Offsets are measured from two',
  ]);
  expect(codesOf([at(1), at(1)])).toEqual([
    'POINTS_COINCIDE fixed: the two fixed points are at the same place. Give two that are well apart',
  ]);
});
