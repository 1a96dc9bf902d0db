import { describe, expect, test } from 'vitest';
import { checkFlatness, type Straightedge } from 'settline/checks';
import { testRefusals } from '../refusals.js';

const at = (station: number, height: number) => ({
  station: { value: station, unit: 'm' as const },
  height: { value: height, unit: 'mm' as const },
});
const every = (spacing: number, heights: readonly number[]) =>
  heights.map((height, k) => at(k * spacing, height));
const shown = (edge: Straightedge) => ({
  gap: edge.greatestGap.toNumber('mm'),
  at: edge.at.toNumber('m'),
  contacts: edge.contacts.map(({ station }) => station.toNumber('m')),
});

describe('checkFlatness without a tolerance', () => {
  test('a dip between the ends', () => {
    const edge = checkFlatness({ profile: every(0.5, [2, 0, -1, -3, -1, 0, 2]), length: '3 m' });
    expect(shown(edge)).toEqual({ gap: 5, at: 1.5, contacts: [0, 3] });
    expect(edge.contacts.map(({ height }) => height.toNumber('mm'))).toEqual([2, 2]);
    expect(edge).toMatchObject({ isSparse: false, overhangs: false });
    expect(edge.reach.toNumber('m')).toBe(3);
  });

  test('a hump makes it rock: the greater of the two sides', () => {
    const edge = checkFlatness({ profile: every(0.5, [0, 0, -2, 4, -1, -2, 0]), length: '3 m' });
    expect(shown(edge)).toEqual({ gap: 14 / 3, at: 1, contacts: [0, 1.5] });
  });

  test('slides to where the gap is, and no further than it is long', () => {
    const heights = [0, 0, 0, 0, 0, -7, 0, 0, -9, -9, 0];
    expect(shown(checkFlatness({ profile: every(1, heights), length: '2 m' }))).toEqual({
      gap: 7,
      at: 5,
      contacts: [4, 6],
    });
    expect(shown(checkFlatness({ profile: every(1, heights), length: '3 m' }))).toMatchObject({
      gap: 9,
      at: 8,
      contacts: [7, 10],
    });
    // a hair shorter than three bays no longer bridges the wide dip
    expect(shown(checkFlatness({ profile: every(1, heights), length: '2.999 m' })).gap).toBe(7);
  });

  test('lies without a gap on a slope and on a crown', () => {
    expect(shown(checkFlatness({ profile: every(1, [0, -20, -40]), length: '3 m' }))).toEqual({
      gap: 0,
      at: 0,
      contacts: [0, 2],
    });
    const crown = checkFlatness({ profile: every(1, [0, 9, 10, 8]), length: '3 m' });
    expect(shown(crown)).toEqual({ gap: 0, at: 0, contacts: [0, 1] });
  });

  test('touches three: the contacts are the farthest apart', () => {
    const edge = checkFlatness({ profile: every(1, [0, 0, -5, 0, 0]), length: '4 m' });
    expect(shown(edge)).toEqual({ gap: 5, at: 2, contacts: [0, 4] });
  });

  test('the first of equal gaps', () => {
    expect(shown(checkFlatness({ profile: every(1, [0, -5, 0, -5, 0]), length: '2 m' })).at).toBe(
      1,
    );
  });

  test('says how well the readings show the profile', () => {
    const profile = [at(0, 0), at(0.4, 0), at(1, 0), at(3, 0), at(3.5, 0), at(5, 0)];
    const short = checkFlatness({ profile, length: '1.2 m' });
    expect(short).toMatchObject({ isSparse: true, overhangs: false });
    expect(short.reach.toNumber('m')).toBe(0);
    const long = checkFlatness({ profile, length: '10 m' });
    expect(long).toMatchObject({ isSparse: false, overhangs: true });
    expect(long.reach.toNumber('m')).toBe(5);
    expect(checkFlatness({ profile: profile.slice(0, 2), length: '3 m' }).isSparse).toBe(true);
  });

  test('shows its working', () => {
    const edge = checkFlatness({ profile: every(1, [0, -5, 0]), length: '2 m' });
    expect(edge.working.map(({ title }) => title)).toEqual(['Largest gap below the straightedge']);
    expect(edge.working[0]?.result.value).toBe(edge.greatestGap);
    expect(Object.isFrozen(edge.contacts[0])).toBe(true);
  });
});

test('a straightedge that reaches no second reading is refused in words', () => {
  const run = () => checkFlatness({ profile: every(1, [0, -5, 0]), length: '0.5 m' });
  expect(run).toThrow('no position of the straightedge has two readings under it');
});

testRefusals(checkFlatness, { profile: every(1, [0, -5, 0]), length: '3 m' }, [
  ['profile', undefined, 'REQUIRED'],
  ['profile', [], 'EMPTY_LIST'],
  ['profile', [at(0, 0)], 'TOO_FEW'],
  ['profile', [at(0, 0), at(2, 0), at(1, 0)], 'NOT_INCREASING', 'profile[2].station'],
  ['profile', [at(0, 0), at(0, 0)], 'NOT_INCREASING', 'profile[1].station'],
  ['profile.1.height', 3, 'UNIT_MISSING', 'profile[1].height'],
  ['profile.1.station', '200 km', 'OUT_OF_RANGE', 'profile[1].station'],
  ['profile.1', 'x', 'WRONG_TYPE', 'profile[1]'],
  ['length', undefined, 'REQUIRED', 'tolerance'],
  ['layer', 'base', 'CONFLICTING_FIELDS'],
  ['uncertainty', '1 mm', 'CONFLICTING_FIELDS'],
  ['tolerance', 'paver-guide-mm', 'CONFLICTING_FIELDS'],
  ['length', '0 m', 'NOT_POSITIVE'],
  ['length', '0.999 m', 'READINGS_TOO_SPARSE', 'profile'],
  ['length', '11 km', 'OUT_OF_RANGE'],
]);
