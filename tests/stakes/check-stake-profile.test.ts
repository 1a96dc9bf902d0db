import { describe, expect, test } from 'vitest';
import { checkStakeProfile } from 'settline/stakes';
import { length } from 'settline/units';
import { expectFault } from '../faults.js';
import { testRefusals } from '../refusals.js';

type Row = readonly [id: string, station: string, elevation: string];
const check = (
  rows: readonly Row[],
  reference: 'ends' | 'first' | 'best-fit',
  tolerance = '3 mm',
) =>
  checkStakeProfile({
    stakes: rows.map(([id, station, elevation]) => ({ id, station, elevation })),
    tolerance,
    reference,
  });
const moves = (profile: ReturnType<typeof check>) =>
  profile.moves.map(
    ({ id, distance, direction }) => `${id} ${distance.to('mm').toFixed(3)} ${direction}`,
  );

const fall: Row[] = [
  ['A', '0 m', '10 m'],
  ['B', '5 m', '9.92 m'],
  ['C', '10 m', '9.8 m'],
];

test('ends held: marks between are judged against their grade', () => {
  const profile = check(fall, 'ends');
  expect(profile.slope.to('percent').toString()).toBe('-2');
  expect(profile.rises.map(({ grade }) => grade.to('m').toString())).toEqual(['10', '9.9', '9.8']);
  expect(profile.rises.map(({ rise }) => rise.to('mm').toString())).toEqual(['0', '20', '0']);
  expect(profile.code).toBe('out-of-line');
  expect(moves(profile)).toEqual(['B 20.000 down']);
  expect(profile.worst.id).toBe('B');
  expect(profile.ambiguous).toBe(false);
});

test('a mark on the tolerance passes, a hair over fails', () => {
  expect(check(fall, 'ends', '20 mm').ok).toBe(true);
  expect(check(fall, 'ends', '19.9999999999999999999999 mm').ok).toBe(false);
});

test('the first mark held: the slope is the best from there', () => {
  // sum (s - s0)(z - z0) / sum (s - s0)^2 = (5 x -0.08 + 10 x -0.2) / 125 = -0.0192
  const profile = check(fall, 'first');
  expect(profile.slope.to('percent').toString()).toBe('-1.92');
  expect(profile.rises.map(({ rise }) => rise.to('mm').toString())).toEqual(['0', '16', '-8']);
  expect(moves(profile)).toEqual(['B 16.000 down', 'C 8.000 up']);
});

test('best fit of three: which is off cannot be known', () => {
  // slope -0.02, mean 9.90667: B 13.333 mm high, A and C 6.667 mm low
  const profile = check(fall, 'best-fit');
  expect(profile.rises.map(({ rise }) => rise.to('mm').toFixed(3))).toEqual([
    '-6.667',
    '13.333',
    '-6.667',
  ]);
  expect(profile.ambiguous).toBe(true);
  expect(profile.code).toBe('ambiguous');
  expect(profile.note).toContain('not all');
  // each alternative brings the mark onto the line of the other two
  expect(moves(profile)).toEqual(['A 40.000 up', 'B 20.000 down', 'C 40.000 up']);
});

test('best fit of five: the one that is off is found', () => {
  const rows: Row[] = ['10', '9.9', '9.85', '9.7', '9.6'].map((z, k) => [
    `S${k}`,
    `${5 * k} m`,
    `${z} m`,
  ]);
  const profile = check(rows, 'best-fit');
  expect(profile.ambiguous).toBe(false);
  expect(moves(profile)).toEqual(['S2 50.000 down']);
});

test('two marks are always on one grade', () => {
  const profile = check(fall.slice(0, 2), 'best-fit', '0 mm');
  expect(profile).toMatchObject({ ok: null, code: 'always-in-line', moves: [] });
});

test('stations may run back, and levels in any unit', () => {
  const profile = checkStakeProfile({
    stakes: [
      { id: 'A', station: '30 ft', elevation: length('100 ft') },
      { id: 'B', station: '20 ft', elevation: `100' 2 1/2"` },
      { id: 'C', station: '10 ft', elevation: `100' 5"` },
    ],
    tolerance: '0 in',
    reference: 'ends',
  });
  expect(profile.ok).toBe(true);
  expect(profile.slope.to('percent').toFixed(4)).toBe('-2.0833');
});

test('the working gives each mark', () => {
  const { working } = check(fall, 'ends');
  expect(working).toHaveLength(4);
  expect(working[2]?.result.value).toEqual(length('20 mm'));
});

describe('refused', () => {
  test('ends at one station, all at one station', () => {
    const back: Row[] = [...fall, ['D', '0 m', '9 m']];
    expectFault(() => check(back, 'ends'), 'POINTS_COINCIDE');
    const post: Row[] = fall.map(([id, , z]) => [id, '1 m', z]);
    expectFault(() => check(post, 'first'), 'POINTS_COINCIDE');
    expectFault(() => check(post, 'best-fit'), 'POINTS_COINCIDE');
  });

  const stakes = fall.map(([id, station, elevation]) => ({ id, station, elevation }));
  testRefusals(checkStakeProfile, { stakes, tolerance: '3 mm', reference: 'ends' }, [
    ['stakes', undefined, 'REQUIRED'],
    ['stakes', [], 'EMPTY_LIST'],
    ['stakes', stakes.slice(0, 1), 'TOO_FEW'],
    ['stakes.1.id', 'A', 'DUPLICATE_ID'],
    ['stakes.1.station', 5, 'UNIT_MISSING'],
    ['stakes.2.elevation', undefined, 'REQUIRED'],
    ['tolerance', '-1 mm', 'NEGATIVE'],
    ['tolerance', '11 m', 'OUT_OF_RANGE'],
    ['reference', 'middle', 'UNKNOWN_CHOICE'],
  ]);
});

test('a grade from a held level, NIST StRD dataset NoInt2 as remembered', () => {
  const elevations = [0, 3, 4, 4];
  const stakes = [0, 4, 5, 6].map((station, k) => ({
    id: `P${k}`,
    station: { value: station, unit: 'm' } as const,
    elevation: { value: elevations[k] ?? Number.NaN, unit: 'm' } as const,
  }));
  const { slope } = checkStakeProfile({ stakes, tolerance: '0 m', reference: 'first' });
  expect(slope.toNumber('ratio')).toBeCloseTo(0.727272727272727, 15);
});
