import { describe, expect, test } from 'vitest';
import { stakeOutliers } from 'settline/stakes';
import { expectFault } from '../faults.js';
import { testRefusals } from '../refusals.js';

const row = (offsets: readonly number[]) =>
  offsets.map((mm, k) => ({
    id: `S${k + 1}`,
    x: { value: 3 * k, unit: 'm' } as const,
    y: { value: mm, unit: 'mm' } as const,
  }));

describe('stakes in plan', () => {
  test('one that stands out is named, with the move onto the line of the others', () => {
    const found = stakeOutliers({ stakes: row([0, 1, -1, 1, 40, -1, 0, 1]) });
    expect(found.outliers).toEqual(['S5']);
    expect(found.worst).toBe('S5');
    expect(found.degreesOfFreedom).toBe(5);
    expect(found.significance).toBe(0.05);
    const off = found.stakes[4];
    // least squares of the others, by a statistics package: 39.849315 mm
    expect(off?.deleted.to('mm').toNumber()).toBeCloseTo(39.849315, 5);
    expect(off?.move).toMatchObject({ id: 'S5', direction: 'right' });
    expect(off?.move.distance.equals(off.deleted)).toBe(true);
    expect(found.note).toContain('One stake');
  });

  test('scatter alone names none', () => {
    const found = stakeOutliers({ stakes: row([0, 3, -4, 2, 5, -3, 1, -2]) });
    expect(found.outliers).toEqual([]);
    expect(found.note).toContain('No stake');
  });

  test('others exactly in line: no scatter to measure by, so any offset stands out', () => {
    const found = stakeOutliers({ stakes: row([0, 0, 7, 0, 0]) });
    expect(found.stakes[2]?.studentized).toBeNull();
    expect(found.stakes[2]?.deleted.to('mm').toString()).toBe('7');
    expect(found.outliers).toEqual(['S3']);
    expect(found.worst).toBe('S3');
    // unless it keeps the tolerance
    expect(stakeOutliers({ stakes: row([0, 0, 7, 0, 0]), tolerance: '7 mm' }).outliers).toEqual([]);
  });

  test('leverages add up to two', () => {
    const { stakes } = stakeOutliers({ stakes: row([0, 3, -4, 2, 5, -3]) });
    expect(stakes.reduce((sum, { leverage }) => sum + leverage, 0)).toBeCloseTo(2, 12);
  });

  test('a row whose others have no direction is refused', () => {
    const square = ['0 m,0 m', '1 m,0 m', '1 m,1 m', '0 m,1 m', '9 m,9 m'];
    const stakes = square.map((xy, k) => {
      const [x = '', y = ''] = xy.split(',');
      return { id: `S${k}`, x, y };
    });
    expect(expectFault(() => stakeOutliers({ stakes }), 'DIRECTION_UNDEFINED').path).toEqual([
      'stakes',
      4,
    ]);
  });

  const stakes = row([0, 1, -1, 1]);
  testRefusals(stakeOutliers, { stakes, tolerance: '1 mm', significance: '0.01' }, [
    ['stakes', stakes.slice(0, 3), 'TOO_FEW'],
    ['stakes.1.id', 'S1', 'DUPLICATE_ID'],
    ['stakes.1.x', '3', 'UNIT_MISSING'],
    ['tolerance', '-1 mm', 'NEGATIVE'],
    ['significance', 0, 'NOT_POSITIVE'],
    ['significance', 0.6, 'OUT_OF_RANGE'],
  ]);
});

describe('marks in profile', () => {
  const marks = (levels: readonly number[], step = 3) =>
    levels.map((mm, k) => ({
      id: `S${k + 1}`,
      station: { value: step * k, unit: 'm' } as const,
      elevation: { value: mm, unit: 'mm' } as const,
    }));

  test('two that are off: the note says to move one and check again', () => {
    const off = Array.from({ length: 17 }, (_, k) => (k === 4 ? 60 : k === 10 ? -60 : k % 3));
    const { outliers, note } = stakeOutliers({ stakes: row(off), tolerance: '5 mm' });
    expect(outliers).toEqual(['S5', 'S11']);
    expect(note).toBe(
      'More than one stake is off. Move only the worst onto the line of the others, then check again. One bad stake can make a good one look bad.',
    );
  });

  test('a low mark is to go up', () => {
    const found = stakeOutliers({ stakes: marks([0, 1, -1, 1, -40, -1, 0, 1]) });
    expect(found.outliers).toEqual(['S5']);
    expect(found.stakes[4]?.move.direction).toBe('up');
  });

  test('the end of four: leverage 0.7, and the line of the other three by pencil', () => {
    const found = stakeOutliers({ stakes: marks([0, 0, 0, 30], 1) });
    expect(found.stakes[3]?.leverage).toBeCloseTo(0.7, 15);
    expect(found.stakes[3]?.deleted.to('mm').toString()).toBe('30');
    expect(found.stakes[3]?.studentized).toBeNull();
    // without S1: 0, 0, 30 at 1, 2, 3 make 15 mm a metre through 10 mm at 2, so -20 at 0
    expect(found.stakes[0]?.deleted.to('mm').toString()).toBe('20');
  });

  const stakes = marks([0, 1, -1, 1]);
  testRefusals(stakeOutliers, { stakes }, [
    ['stakes', stakes.slice(0, 3), 'TOO_FEW'],
    ['stakes.3.station', undefined, 'REQUIRED'],
    ['significance', '60%', 'NOT_A_NUMBER'],
    ['tolerance', '11 m', 'OUT_OF_RANGE'],
  ]);

  test('three at one station: without the fourth there is no grade', () => {
    const post = stakes.map((stake, k) => ({ ...stake, station: k < 3 ? '1 m' : '2 m' }));
    expectFault(() => stakeOutliers({ stakes: post }), 'POINTS_COINCIDE');
  });
});
