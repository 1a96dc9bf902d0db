import { describe, expect, test } from 'vitest';
import { buildUp } from 'settline/build-up';
import {
  allowableMisclosure,
  reduceLevels,
  spreadMisclosure,
  type LevelBook,
} from 'settline/levelling';
import { length } from 'settline/units';
import { expectFault, faultsOf } from '../faults.js';
import { testRefusals } from '../refusals.js';
import { formulaOf } from '../formula-of.js';

const mm = (book: LevelBook) => book.rows.map(({ adjusted }) => adjusted.to('mm').toString());

const LOOP = {
  start: '30 m',
  rows: [
    { point: 'BM', back: '1.5 m' },
    { point: 'A', intermediate: '1.2 m' },
    { point: 'TP', fore: '1.4 m', back: '1.6 m' },
    { point: 'B', intermediate: '1.8 m' },
    { point: 'BM', fore: '1.704 m' },
  ],
  known: '30 m',
} as const;

describe('a closed loop by pencil', () => {
  const book = reduceLevels(LOOP);

  test('levels, heights, rises and falls', () => {
    expect(book.rows.map(({ elevation }) => elevation.toNumber('m'))).toEqual([
      30, 30.3, 30.1, 29.9, 29.996,
    ]);
    const column = (name: 'instrumentHeight' | 'rise' | 'fall' | 'back' | 'distance') =>
      book.rows.map((row) => row[name]?.toNumber('mm') ?? row[name]);
    expect(column('instrumentHeight')).toEqual([31500, null, 31700, null, null]);
    expect(column('rise')).toEqual([null, 300, null, null, 96]);
    expect(column('fall')).toEqual([null, null, 200, 200, null]);
    expect(column('back')).toEqual([1500, null, 1600, null, null]);
    expect(column('distance')).toEqual([null, null, null, null, null]);
    expect(book.rows.map(({ setUp }) => setUp)).toEqual([0, 1, 1, 2, 2]);
  });

  test('sums of the check', () => {
    const { check } = book;
    expect(check.sumBack.toNumber('m')).toBe(3.1);
    expect(check.sumFore.toNumber('m')).toBe(3.104);
    expect(check.sumRise.toNumber('mm')).toBe(396);
    expect(check.sumFall.toNumber('mm')).toBe(400);
    expect(check.backLessFore.toNumber('mm')).toBe(-4);
    expect(check.riseLessFall.toNumber('mm')).toBe(-4);
    expect(check.lastLessFirst.toNumber('mm')).toBe(-4);
    expect(check.agrees).toBe(true);
  });

  test('misclosure computed less known, spread by set-ups', () => {
    expect(book.misclosure?.toNumber('mm')).toBe(-4);
    expect(book.adjustment).toBe('set-ups');
    expect(mm(book)).toEqual(['30000', '30302', '30102', '29904', '30000']);
  });

  test('no allowable misclosure was given, and the note says what to do', () => {
    expect(book.isAccepted).toBeNull();
    expect(book.allowable).toBeNull();
    expect(book.note).toContain('No allowable misclosure');
  });

  test('working ends with the misclosure', () => {
    expect(book.working.map(({ title }) => title)).toEqual([
      'Check by height of instrument',
      'Check by rise and fall',
      'Misclosure',
    ]);
    const shown = book.working[2]?.given.map(({ value }) => String(value));
    expect(shown).toEqual(['29.996 m', '30 m']);
    expect(JSON.stringify(book)).not.toContain('working');
  });
});

test('a turning point in two rows is the same as in one', () => {
  const rows = [
    { point: 'BM', back: '1.5 m' },
    { point: 'A', intermediate: '1.2 m' },
    { point: 'TP', fore: '1.4 m' },
    { point: 'TP', back: '1.6 m' },
    { point: 'B', intermediate: '1.8 m' },
    { point: 'BM', fore: '1.704 m' },
  ];
  const book = reduceLevels({ start: '30 m', rows, known: '30 m' });
  expect(mm(book)).toEqual(['30000', '30302', '30102', '30102', '29904', '30000']);
  expect(book.rows[3]?.instrumentHeight?.toNumber('m')).toBe(31.7);
  expect(book.check.agrees).toBe(true);
  expect(book.setUps).toBe(2);
});

test('without a known closing level nothing is adjusted', () => {
  const { known, ...open } = LOOP;
  expect(known).toBe('30 m');
  const book = reduceLevels(open);
  expect(book.misclosure).toBeNull();
  expect(book.isAccepted).toBeNull();
  expect(book.adjustment).toBe('none');
  expect(book.rows.every(({ correction }) => correction.isZero())).toBe(true);
  expect(book.note).toContain('Close on a known mark');
});

test('a book that ends with an intermediate sight', () => {
  const book = reduceLevels({
    start: '0 m',
    rows: [
      { point: 'BM', back: '1 m' },
      { point: 'A', intermediate: '2 m' },
    ],
  });
  expect(book.check.sumFore.toNumber('m')).toBe(2);
  expect(book.check.agrees).toBe(true);
});

describe('a rule for the misclosure', () => {
  test('exactly on the rule is accepted and spread', () => {
    const book = reduceLevels({ ...LOOP, allowable: '4 mm' });
    expect(book.isAccepted).toBe(true);
    expect(book.adjustment).toBe('set-ups');
    expect(book.note).toContain('within the allowable');
  });

  test('slightly over it is reported and not spread', () => {
    const book = reduceLevels({ ...LOOP, allowable: '3.999999 mm' });
    expect(book.isAccepted).toBe(false);
    expect(book.adjustment).toBe('none');
    expect(book.rows.at(-1)?.adjusted.toNumber('m')).toBe(29.996);
    expect(book.note).toContain('Find the mistake');
  });

  test('by set-ups: 2 sqrt(2) mm is not enough, 3 sqrt(2) mm is', () => {
    const within = (k: string) =>
      reduceLevels({ ...LOOP, allowable: { k, per: 'set-up' } }).isAccepted;
    expect(within('2 mm')).toBe(false);
    expect(within('3 mm')).toBe(true);
  });

  test('by distance, from the distance of the first row on', () => {
    const distances = ['100 m', '110 m', '150 m', '180 m', '200 m'];
    const rows = LOOP.rows.map((row, k) => ({ ...row, distance: distances[k] ?? '' }));
    const book = reduceLevels({
      ...LOOP,
      rows,
      allowable: { k: '10 mm', per: '1 km' },
      adjustBy: 'distance',
    });
    // 10 sqrt(0.1)
    expect(book.allowable?.toNumber('mm')).toBeCloseTo(3.16227766, 8);
    expect(book.isAccepted).toBe(false);
    const spread = reduceLevels({ ...LOOP, rows, adjustBy: 'distance' });
    expect(spread.rows.map(({ correction }) => correction.toNumber('mm'))).toEqual([
      0, 0.4, 2, 3.2, 4,
    ]);
    expect(spread.adjustment).toBe('distance');
    // the first row stands at the start
    const { distance, ...first } = rows[0] ?? { point: '', distance: '' };
    expect(distance).toBe('100 m');
    const fromStart = reduceLevels({
      ...LOOP,
      rows: [first, ...rows.slice(1)],
      adjustBy: 'distance',
    });
    expect(fromStart.rows.map(({ correction }) => correction.toNumber('mm'))).toEqual([
      0, 2.2, 3, 3.6, 4,
    ]);
  });
});

describe('refusals of reduceLevels', () => {
  testRefusals(reduceLevels, LOOP, [
    ['start', undefined, 'REQUIRED'],
    ['start', '30', 'UNIT_MISSING'],
    ['start', '20 km', 'OUT_OF_RANGE'],
    ['rows', [], 'EMPTY_LIST'],
    ['rows', undefined, 'REQUIRED'],
    ['rows', [{ point: 'BM', back: '1 m' }], 'TOO_FEW'],
    ['rows.1.intermediate', '-1 m', 'NEGATIVE'],
    ['rows.1.intermediate', '21 m', 'OUT_OF_RANGE'],
    ['rows.1.point', '', 'EMPTY'],
    ['rows.1.intermediate', undefined, 'BOOK_ROW', 'rows[1]'],
    ['rows.1.back', '1 m', 'BOOK_ROW', 'rows[1]'],
    ['rows.1.fore', '1 m', 'BOOK_ROW', 'rows[1]'],
    ['rows.0.back', undefined, 'BOOK_ROW', 'rows[0]'],
    ['rows.0.fore', '1 m', 'BOOK_ROW', 'rows[0]'],
    ['rows.2.fore', undefined, 'BOOK_ROW', 'rows[2]'],
    ['rows.2.back', undefined, 'BOOK_ROW', 'rows[3]'],
    ['rows.4.back', '1 m', 'BOOK_ROW', 'rows[4].back'],
    ['rows.4', { point: 'BM', intermediate: '1.7 m' }, 'BOOK_ROW', 'rows[4].fore'],
    ['known', '1 lb', 'UNIT_UNKNOWN'],
    ['allowable', { k: '0 mm', per: 'set-up' }, 'NOT_POSITIVE', 'allowable.k'],
    ['allowable', { k: '1 mm', per: 'day' }, 'UNIT_UNKNOWN', 'allowable.per'],
    ['allowable', '-1 mm', 'NEGATIVE'],
    ['adjustBy', 'time', 'UNKNOWN_CHOICE'],
    ['adjustBy', 'distance', 'REQUIRED', 'rows[1].distance'],
    ['allowable', { k: '10 mm', per: '1 km' }, 'REQUIRED', 'rows[4].distance'],
    ['rows.1.distance', '-1 m', 'NEGATIVE'],
  ]);

  test('distances that run back, or do not run at all', () => {
    const withDistances = (distances: readonly string[]) =>
      reduceLevels({
        ...LOOP,
        adjustBy: 'distance',
        rows: LOOP.rows.map((row, k) => ({ ...row, distance: distances[k] ?? '' })),
      });
    const back = () => withDistances(['0 m', '10 m', '9 m', '20 m', '30 m']);
    expect(expectFault(back, 'NOT_INCREASING').path).toEqual(['rows', 2, 'distance']);
    const still = () => withDistances(['5 m', '5 m', '5 m', '5 m', '5 m']);
    expect(expectFault(still, 'NOT_INCREASING').path).toEqual(['rows', 4, 'distance']);
  });

  test('a backsight alone on a new point hangs in the air', () => {
    const rows = [
      { point: 'BM', back: '1.5 m' },
      { point: 'TP', fore: '1.4 m' },
      { point: 'TP2', back: '1.6 m' },
      { point: 'BM', fore: '1.7 m' },
    ];
    expectFault(() => reduceLevels({ start: '30 m', rows }), 'BOOK_ROW');
    const doubled = [
      { point: 'BM', back: '1.5 m' },
      { point: 'TP', fore: '1.4 m', back: '1.6 m' },
      { point: 'TP', back: '1.6 m' },
      { point: 'BM', fore: '1.7 m' },
    ];
    expectFault(() => reduceLevels({ start: '30 m', rows: doubled }), 'BOOK_ROW');
  });

  test('all faults come at once', () => {
    const faults = faultsOf(() =>
      reduceLevels({ start: '30', rows: [{ point: '', back: '-1 m' }, { point: 'A' }] }),
    );
    expect(faults.map(({ code }) => code)).toEqual([
      'UNIT_MISSING',
      'EMPTY',
      'NEGATIVE',
      'BOOK_ROW',
    ]);
  });
});

describe('allowableMisclosure', () => {
  test('is exact where the root is', () => {
    const { allowable, working } = allowableMisclosure({
      rule: { k: '12 mm', per: '1 km' },
      distance: '250 m',
    });
    expect(allowable.equals(length('6 mm'))).toBe(true);
    expect(formulaOf(working[0])).toBe('a = k * sqrt(D / d)');
  });

  testRefusals(allowableMisclosure, { rule: { k: '3 mm', per: 'set-up' }, setUps: 4 }, [
    ['rule', undefined, 'REQUIRED'],
    ['rule.k', '0 mm', 'NOT_POSITIVE'],
    ['setUps', undefined, 'REQUIRED'],
    ['setUps', 0, 'NOT_POSITIVE'],
    ['setUps', 1.5, 'NOT_WHOLE'],
    ['setUps', 1_000_001, 'OUT_OF_RANGE'],
    ['rule.per', '1 km', 'REQUIRED', 'distance'],
  ]);
  testRefusals(allowableMisclosure, { rule: { k: '3 mm', per: '1 km' }, distance: '1 km' }, [
    ['distance', '0 m', 'NOT_POSITIVE'],
    ['rule.per', '0 km', 'NOT_POSITIVE'],
  ]);
});

describe('spreadMisclosure', () => {
  const LEVELS = {
    known: '10 m',
    points: [
      { point: 'A', elevation: '9.5 m', along: 0 },
      { point: 'B', elevation: '9.8 m', along: 1 },
      { point: 'C', elevation: '10.009 m', along: 3 },
    ],
  } as const;

  test('thirds come out exactly', () => {
    const { points, misclosure } = spreadMisclosure(LEVELS);
    expect(misclosure.toNumber('mm')).toBe(9);
    expect(points.map(({ correction }) => correction.toNumber('mm'))).toEqual([0, -3, -9]);
    const odd = spreadMisclosure({ ...LEVELS, known: '10.008 m' });
    expect(odd.points[1]?.correction.equals(length('-1/3 mm'))).toBe(true);
    expect(odd.points[2]?.adjusted.equals(length('10.008 m'))).toBe(true);
  });

  testRefusals(spreadMisclosure, LEVELS, [
    ['known', undefined, 'REQUIRED'],
    ['points', [], 'EMPTY_LIST'],
    ['points.1.point', '', 'EMPTY'],
    ['points.1.along', 4, 'NOT_INCREASING', 'points[2].along'],
    ['points.1.along', 0.5, 'NOT_WHOLE'],
    ['points.1.along', -1, 'NEGATIVE'],
    ['points.2.along', '1 m', 'WRONG_TYPE'],
    ['points', [{ point: 'A', elevation: '1 m', along: 0 }], 'NOT_POSITIVE', 'points[0].along'],
  ]);
});

test('a build-up is no level book', () => {
  const walk = buildUp({ layers: [{ name: 'paver', thickness: '60 mm' }] });
  expectFault(() => reduceLevels(walk as never), 'REQUIRED');
});
