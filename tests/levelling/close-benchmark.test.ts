import { describe, expect, test } from 'vitest';
import { closeBenchmark, type ClosedDay } from 'settline/levelling';
import { testRefusals } from '../refusals.js';
import { formulaOf } from '../formula-of.js';

const DAY = {
  benchmark: '30 m',
  back: '1.5 m',
  shots: [
    { point: 'A', reading: '1.2 m' },
    { point: 'midday', reading: '1.498 m', known: '30 m' },
    { point: 'B', reading: '1.3 m' },
    { point: 'C', reading: '1.4 m' },
    { point: 'evening', reading: '1.495 m', known: '30 m' },
  ],
  allowable: '5 mm',
} as const;

const shown = (day: ClosedDay) =>
  day.shots.map(({ point, status, correction }) => [
    point,
    status,
    correction?.toNumber('mm') ?? null,
  ]);

describe('every check is within the allowable', () => {
  const day = closeBenchmark(DAY);

  test('checks, with what changed from one to the next', () => {
    expect(day.instrumentHeight.toNumber('m')).toBe(31.5);
    expect(day.checks.map(({ misclosure }) => misclosure.toNumber('mm'))).toEqual([2, 5]);
    expect(day.checks.map(({ change }) => change.toNumber('mm'))).toEqual([2, 3]);
    // exactly 5 mm is within 5 mm
    expect(day.checks.map(({ isAccepted }) => isAccepted)).toEqual([true, true]);
    expect(day.misclosure.toNumber('mm')).toBe(5);
    expect(day.isAccepted).toBe(true);
    expect(day.suspects).toEqual([]);
    expect(day.note).toContain('Use the adjusted levels');
  });

  test('the misclosure is deducted evenly between checks', () => {
    expect(shown(day)).toEqual([
      ['A', 'good', -1],
      ['midday', 'check', -2],
      ['B', 'good', -3],
      ['C', 'good', -4],
      ['evening', 'check', -5],
    ]);
    expect(day.shots.map(({ adjusted }) => adjusted?.toNumber('m'))).toEqual([
      30.299, 30, 30.197, 30.096, 30,
    ]);
  });

  test('in time, where it was noted', () => {
    const times = ['1 h', '4 h', '5 h', '6 h', '10 h'];
    const timed = closeBenchmark({
      ...DAY,
      shots: DAY.shots.map((shot, k) => ({ ...shot, after: times[k] ?? '' })),
    });
    expect(shown(timed).map(([, , correction]) => correction)).toEqual([-0.5, -2, -2.5, -3, -5]);
    // faster after midday: each run is spread over its own time
    const hours = [2, 8, 9, 10, 11];
    const faster = closeBenchmark({
      ...DAY,
      shots: DAY.shots.map((shot, k) => ({ ...shot, after: `${hours[k] ?? 0} h` })),
    });
    expect(shown(faster).map(([, , correction]) => correction)).toEqual([-0.5, -2, -3, -4, -5]);
  });
});

describe('a check is outside the allowable', () => {
  test('what was shot before the last good check stands, the rest is suspect', () => {
    const day = closeBenchmark({ ...DAY, allowable: '4.999 mm' });
    expect(day.isAccepted).toBe(false);
    expect(day.checks.map(({ isAccepted }) => isAccepted)).toEqual([true, false]);
    expect(shown(day)).toEqual([
      ['A', 'good', -1],
      ['midday', 'check', -2],
      ['B', 'suspect', null],
      ['C', 'suspect', null],
      ['evening', 'check', null],
    ]);
    expect(day.suspects).toEqual(['B', 'C']);
    expect(day.note).toBe(
      'The check on evening is outside the allowable: the instrument moved, or a reading is wrong. Do not use B, C. Set up again and shoot them again.',
    );
    expect(day.shots[2]?.adjusted).toBeNull();
  });

  test('a good check after a bad one does not clear what lies between', () => {
    const day = closeBenchmark({
      ...DAY,
      allowable: '5 mm',
      shots: DAY.shots.map((shot) =>
        shot.point === 'midday' ? { ...shot, reading: '1.48 m' } : shot,
      ),
    });
    expect(day.checks.map(({ isAccepted }) => isAccepted)).toEqual([false, true]);
    expect(day.isAccepted).toBe(false);
    expect(day.suspects).toEqual(['A', 'B', 'C']);
  });

  test('nothing was shot since the last good check', () => {
    const day = closeBenchmark({
      ...DAY,
      shots: [{ point: 'BM', reading: '1.4 m', known: '30 m' }],
    });
    expect(day.suspects).toEqual([]);
    expect(day.note).toContain('No point was shot');
  });
});

test('working shows both sums', () => {
  const { working } = closeBenchmark(DAY);
  expect(working.map(formulaOf)).toEqual(['HI = BM + BS', 'm = HI - r - z0']);
});

describe('refusals', () => {
  testRefusals(closeBenchmark, DAY, [
    ['benchmark', undefined, 'REQUIRED'],
    ['back', '-1 m', 'NEGATIVE'],
    ['allowable', undefined, 'REQUIRED'],
    ['allowable', '0 mm', 'NOT_POSITIVE'],
    ['shots', [], 'EMPTY_LIST'],
    ['shots', [null], 'WRONG_TYPE', 'shots[0]'],
    ['shots.0.point', undefined, 'REQUIRED'],
    ['shots.0.reading', undefined, 'REQUIRED'],
    ['shots.4.known', undefined, 'BOOK_ROW'],
    ['shots.0.after', '1 h', 'REQUIRED', 'shots[1].after'],
    ['shots.0.after', '0 h', 'NOT_INCREASING'],
    [
      'shots',
      [
        { point: 'A', reading: '1 m', after: '2 h' },
        { point: 'BM', reading: '1 m', known: '30 m', after: '2 h' },
      ],
      'NOT_INCREASING',
      'shots[1].after',
    ],
  ]);
});
