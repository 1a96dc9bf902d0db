import { describe, expect, test } from 'vitest';
import { columnsText } from '../../src/job/sheet/layout/columns.js';

const first = { head: 'stake', cells: ['A', 'B'] };

describe('a table of a sheet', () => {
  test('has a heading of one line or two', () => {
    expect(columnsText(first, [{ head: 'at', cells: ['1', '2'] }], 20)).toEqual([
      '  stake           at',
      '  A                1',
      '  B                2',
    ]);
    expect(columnsText(first, [{ head: ['down to', 'ground'], cells: ['1', '2'] }], 20)).toEqual([
      '             down to',
      '  stake       ground',
      '  A                1',
      '  B                2',
    ]);
  });

  test('leaves out a column of dashes, and keeps one with a gap', () => {
    const dashes = { head: 'dig', cells: ['-', ''] };
    const gap = { head: 'rise', cells: ['', '3'] };
    expect(columnsText(first, [dashes, gap], 20)).toEqual([
      '  stake         rise',
      '  A',
      '  B                3',
    ]);
  });

  test('says once what every row has', () => {
    const same = { head: 'dig', cells: ['9', '9'], once: 'dig, every stake' };
    const other = { head: 'at', cells: ['1', '2'] };
    expect(columnsText(first, [same, other], 24)).toEqual([
      '  stake               at',
      '  A                    1',
      '  B                    2',
      '  dig, every stake     9',
    ]);
    expect(columnsText(first, [same], 24)).toEqual(['  stake: A, B', '  dig, every stake     9']);
    // one row repeats nothing, and a column without a name for that stays
    const alone = { head: 'stake', cells: ['A'] };
    expect(columnsText(alone, [{ ...same, cells: ['9'] }], 20)[0]).toBe('  stake          dig');
    expect(columnsText(first, [{ head: 'dig', cells: ['9', '9'] }], 20)).toHaveLength(3);
  });

  test('keeps two spaces between cells, so that no two numbers read as one', () => {
    const columns = ['3', '13 1/2', '9 1/4'].map((cell) => ({ head: 'x', cells: [cell, '1'] }));
    for (let width = 18; width < 30; width += 1) {
      expect(columnsText(first, columns, width).join()).not.toMatch(/3 13 1|1\/2 9/);
    }
    const [, row] = columnsText(first, columns, 25);
    expect(row).toBe('  A      3  13 1/2  9 1/4');
  });

  test('goes on in a second table where the sheet is too narrow', () => {
    const columns = ['at', 'ground', 'dig'].map((head) => ({ head, cells: ['12 3/4', '1'] }));
    expect(columnsText(first, columns, 23)).toEqual([
      '  stake      at  ground',
      '  A      12 3/4  12 3/4',
      '  B           1       1',
      '  stake             dig',
      '  A              12 3/4',
      '  B                   1',
    ]);
  });
});
