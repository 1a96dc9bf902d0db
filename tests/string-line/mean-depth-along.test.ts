import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { meanDepthAlong } from 'settline/string-line';
import { testRefusals } from '../refusals.js';
import { runs } from '../runs.js';

type Reading = readonly [station: number, depth?: number];

const string = (id: string, readings: readonly Reading[]) => ({
  id,
  stakes: readings.map(([station, depth], k) => ({
    id: `${id}${k + 1}`,
    station: { value: station, unit: 'm' } as const,
    ...(depth === undefined ? {} : { depth: { value: depth, unit: 'mm' } as const }),
  })),
});
const millimetres = (one: { to(unit: 'mm'): { toString(): string } } | null) =>
  one?.to('mm').toString() ?? null;

const even = [
  [0, 355],
  [1, 365],
  [2, 375],
  [30, 655],
] as const;

describe('mean depth along strings', () => {
  test('stakes close together do not count too often', () => {
    // on ground that rises evenly the mean is the depth at half the string: 355 + 10 x 15
    const { mean, length, unreadStakes, notes } = meanDepthAlong({ strings: [string('A', even)] });
    expect(millimetres(mean)).toBe('505'); // the plain mean of the four is 437.5
    expect(millimetres(length)).toBe('30000');
    expect([unreadStakes, notes]).toEqual([[], []]);
  });

  test('several strings count by their length', () => {
    const short: readonly Reading[] = [
      [5, 100],
      [15, 300],
    ];
    const { mean, strings } = meanDepthAlong({ strings: [string('A', even), string('B', short)] });
    // (505 x 30 + 200 x 10) / 40
    expect(millimetres(mean)).toBe('428.75');
    expect(strings.map((one) => [one.id, millimetres(one.mean), millimetres(one.length)])).toEqual([
      ['A', '505', '30000'],
      ['B', '200', '10000'],
    ]);
  });

  test('names stakes without a reading, and string that was not read', () => {
    const gap: readonly Reading[] = [[0], [2, 100], [4], [8, 400], [11, 100], [12]];
    const { mean, length, strings, unreadStakes, notes } = meanDepthAlong({
      strings: [string('A', gap), string('B', [[0, 300], [6]])],
    });
    // 6 m at 250, 3 m at 250
    expect(millimetres(mean)).toBe('250');
    expect(millimetres(length)).toBe('9000');
    expect(strings.map((one) => millimetres(one.unread))).toEqual(['3000', '6000']);
    expect(strings[1]?.mean).toBeNull();
    expect(unreadStakes).toEqual([
      { string: 'A', stake: 'A1' },
      { string: 'A', stake: 'A3' },
      { string: 'A', stake: 'A6' },
      { string: 'B', stake: 'B2' },
    ]);
    expect(notes).toHaveLength(3);
    expect(notes[0]).toContain('A1 (string A), A3 (string A), A6 (string A), B2 (string B)');
    expect(notes[1]).toContain('Fewer than two readings on string B');
    expect(notes[2]).toContain('String A was not read up to both ends');
  });

  test('cut and fill along one string cancel', () => {
    const both: readonly Reading[] = [
      [0, -100],
      [4, 100],
    ];
    expect(millimetres(meanDepthAlong({ strings: [string('A', both)] }).mean)).toBe('0');
  });

  test('no two readings on any string: no mean', () => {
    const none = meanDepthAlong({ strings: [string('A', [[0, 300]]), string('B', [[0], [1]])] });
    expect(none.mean).toBeNull();
    expect(none.length.isZero()).toBe(true);
    expect(none.working).toEqual([]);
    expect(none.notes).toHaveLength(2);
  });

  test('working', () => {
    const [step] = meanDepthAlong({ strings: [string('A', even)] }).working;
    expect(step?.given.map(({ value }) => value.toString())).toEqual([
      '1 m,1 m,28 m',
      '355 mm,365 mm,375 mm',
      '365 mm,375 mm,655 mm',
    ]);
    expect(step?.result.value.toString()).toBe('0.505 m');
  });

  test('a stake more on a straight, and a string cut in two, change nothing', () => {
    const reading = fc.tuple(
      fc.integer({ min: 1, max: 3000 }),
      fc.integer({ min: -900, max: 2000 }),
    );
    fc.assert(
      fc.property(
        fc.array(reading, { minLength: 3, maxLength: 8 }),
        fc.integer({ min: 1, max: 6 }),
        (steps, at) => {
          let station = 0;
          const readings = steps.map(([run, depth]): Reading => [(station += run), depth]);
          const whole = meanDepthAlong({ strings: [string('A', readings)] }).mean;
          const k = Math.min(at, readings.length - 2);
          const halves = [readings.slice(0, k + 1), readings.slice(k)];
          const cut = meanDepthAlong({ strings: halves.map((half, n) => string(`A${n}`, half)) });
          expect(whole !== null && cut.mean?.equals(whole)).toBe(true);
          const [a, b] = [readings[k], readings[k + 1]] as const;
          const middle: Reading = [
            ((a?.[0] ?? 0) + (b?.[0] ?? 0)) / 2,
            ((a?.[1] ?? 0) + (b?.[1] ?? 0)) / 2,
          ];
          const more = [...readings.slice(0, k + 1), middle, ...readings.slice(k + 1)];
          const same = meanDepthAlong({ strings: [string('A', more)] }).mean;
          expect(whole !== null && same?.equals(whole)).toBe(true);
        },
      ),
      runs(100),
    );
  });

  testRefusals(meanDepthAlong, { strings: [string('A', even), string('B', even)] }, [
    ['strings', undefined, 'REQUIRED'],
    ['strings', [], 'EMPTY_LIST'],
    ['strings.1.id', 'A', 'DUPLICATE_ID'],
    ['strings.0.stakes', [], 'EMPTY_LIST'],
    ['strings.1.stakes.2.station', '1 m', 'NOT_INCREASING'],
    ['strings.0.stakes.1.id', 'A1', 'DUPLICATE_ID'],
    ['strings.0.stakes.0.depth', '21 m', 'OUT_OF_RANGE'],
  ]);
});
