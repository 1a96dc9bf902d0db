import { describe, expect, test } from 'vitest';
import {
  checkRoute,
  drainTime,
  inletArea,
  peakRunoff,
  reservoirDepth,
  stormInDig,
} from 'settline/ground';
import { waterInDig } from 'settline/site';
import { expectFault } from '../faults.js';
import { testRefusals } from '../refusals.js';

const slow = { depth: '5 mm', time: '1 h' } as const;

describe('stone reservoir', () => {
  const storm = { rain: '50 mm', runoff: '30 mm', areaRatio: 1, infiltration: slow } as const;

  test('rain and runoff less what soaks away, over the voids', () => {
    // (30 + 50 - 10) / 0.4 = 175
    const stone = reservoirDepth(storm);
    expect(stone.depth.to('mm').toString()).toBe('175');
    expect(stone.water.to('mm').toString()).toBe('70');
    expect(stone.drainHours).toBe(14);
    expect([stone.extrapolated, stone.notes]).toEqual([false, []]);
    expect(stone.cautions.map(({ id }) => id)).toEqual(['ground', 'drainage']);
  });

  test('soil that takes it all, none, or twice the area beside', () => {
    const fast = reservoirDepth({ ...storm, infiltration: { depth: '100 mm', time: '1 h' } });
    expect([fast.depth.isZero(), fast.drainHours]).toEqual([true, 0]);
    const none = reservoirDepth({ ...storm, infiltration: { depth: 0, time: '1 h' } });
    expect([none.depth.to('mm').toString(), none.drainHours]).toEqual(['200', null]);
    expect(none.notes.join()).toContain('underdrain');
    const wide = reservoirDepth({ ...storm, areaRatio: '2.1' });
    expect([wide.extrapolated, wide.notes.length]).toEqual([true, 1]);
    expect(reservoirDepth({ ...storm, areaRatio: 2 }).extrapolated).toBe(false);
    const deep = { rain: '1 m', infiltration: { depth: '45 mm', time: '1 h' } } as const;
    expect(reservoirDepth(deep).extrapolated).toBe(true);
    expect(reservoirDepth({ ...deep, rain: '0.8 m' }).extrapolated).toBe(false);
  });

  testRefusals(reservoirDepth, storm, [
    ['voids', 0, 'NOT_POSITIVE'],
    ['voids', 0.8, 'OUT_OF_RANGE'],
    ['infiltration.time', '0 h', 'NOT_POSITIVE'],
    ['rain', undefined, 'REQUIRED'],
    ['fillTime', 2, 'UNIT_MISSING'],
  ]);

  test('time to drain, and the depth that drains in a time', () => {
    expect(drainTime({ depth: '400 mm', infiltration: slow }).time.to('h').toString()).toBe('32');
    const within = drainTime({ time: '48 h', infiltration: slow, voids: '0.3' });
    expect(within.depth.to('mm').toString()).toBe('800');
    expectFault(() => drainTime({ infiltration: slow }), 'REQUIRED');
    const both = { depth: '1 m', time: '1 h', infiltration: slow } as const;
    expectFault(() => drainTime(both), 'CONFLICTING_FIELDS');
    const dry = { depth: '1 m', infiltration: { depth: 0, time: '1 h' } } as const;
    expect(expectFault(() => drainTime(dry), 'OUT_OF_RANGE').path).toEqual([
      'infiltration',
      'depth',
    ]);
  });
});

describe('runoff', () => {
  const rain = { depth: '36 mm', time: '1 h' } as const;

  test('areas by surface or by coefficient', () => {
    // 36 mm/h is 0.01 l/s on a square metre
    const storm = peakRunoff({
      areas: [
        { area: '100 m2', surface: 'brick' },
        { area: '50 m2', coefficient: '0.5' },
      ],
      rain,
    });
    expect(storm.flow.to('l/s').toString()).toBe('1.1');
    expect(storm.reducedArea.to('m2').toString()).toBe('110');
    expect(storm.coefficient).toBeCloseTo(110 / 150, 14);
    expect(storm.cautions.map(({ id }) => id)).toEqual(['drainage']);
  });

  test('shares are published figures where every area has its surface', () => {
    const brick = { area: '100 m2', surface: 'brick' } as const;
    const own = { area: '50 m2', coefficient: '0.5' } as const;
    const sourceOf = (areas: readonly (typeof brick | typeof own)[]) =>
      peakRunoff({ areas, rain }).working[0]?.given.find(({ symbol }) => symbol === 'C')?.source;
    expect([sourceOf([brick]), sourceOf([brick, own])]).toEqual(['runoff-table', null]);
  });

  test('an inlet, and the height of the far end', () => {
    const inlet = { capacity: '1.1 l/s', rain, coefficient: 1 } as const;
    expect(inletArea(inlet).area.to('m2').toString()).toBe('110');
    expect(inletArea(inlet).rise).toBeNull();
    const rise = inletArea({ ...inlet, run: '8 m', fall: '1.5%' }).rise;
    expect(rise?.to('mm').toString()).toBe('120');
    const dry = { ...inlet, rain: { depth: 0, time: '1 h' } } as const;
    expectFault(() => inletArea(dry), 'OUT_OF_RANGE');
  });

  testRefusals(peakRunoff, { areas: [{ area: '1 m2', coefficient: 1 }], rain }, [
    ['areas', [], 'EMPTY_LIST'],
    ['areas.0.coefficient', 1.1, 'OUT_OF_RANGE'],
    ['areas.0.coefficient', undefined, 'REQUIRED', 'areas[0].surface'],
    ['areas.0.surface', 'brick', 'CONFLICTING_FIELDS'],
    ['rain', '36 mm', 'WRONG_TYPE'],
  ]);

  test('a storm in a dig is the water of `site`', () => {
    const storm = stormInDig({
      area: '40 m2',
      rain,
      duration: '30 min',
      drainsIn: [{ area: '20 m2', surface: 'roof-or-pavement' }],
      pump: '100 l/min',
    });
    const same = waterInDig({
      area: '40 m2',
      rain: '18 mm',
      drainsIn: [{ area: '20 m2', coefficient: '0.8' }],
      pump: '100 l/min',
    });
    expect(storm).toEqual(same);
    expect(storm.volume.to('l').toString()).toBe('1008');
    const plain = stormInDig({ area: '40 m2', rain, duration: '1 h' });
    expect(plain.depth.to('mm').toString()).toBe('36');
    expect(plain.pumpTime).toBeNull();
  });
});

describe('routes', () => {
  const one = (edition: string, segment: object, more: object = {}) =>
    checkRoute({
      edition: edition as 'trail',
      segments: [{ name: 'a', length: '10 ft', slope: '5%', ...segment }],
      ...more,
    }).segments[0];

  test('each fault by its name', () => {
    expect(one('walk-2010', { slope: '1:20' })?.faults).toEqual([]);
    expect(one('walk-2010', { slope: '5.01%' })?.faults).toEqual(['too-steep']);
    expect(one('trail', { slope: '8%', length: '201 ft' })?.faults).toEqual(['too-long']);
    expect(one('trail', { slope: '8%', length: '200 ft' })?.faults).toEqual([]);
    expect(one('ramp-2010', { slope: '1:12', length: '31 ft' })?.faults).toEqual(['rises-too-far']);
    expect(one('ramp-2010', { crossSlope: '1:48' })?.faults).toEqual([]);
    const both = one('ramp-2010', { slope: '9%', crossSlope: '2.1%' });
    expect(both?.faults).toEqual(['too-steep', 'cross-slope']);
    expect(both?.notes).toHaveLength(2);
    expect(both?.maximumLength).toBeNull();
  });

  test('the edition decides: 2 % across passes in 1991, 2.05 % does not', () => {
    expect(one('ramp-1991', { crossSlope: '2%' })?.verdict).toBe('pass');
    expect(one('ramp-1991', { crossSlope: '2.05%' })?.verdict).toBe('fail');
    expect(one('ramp-2010', { crossSlope: '2.05%' })?.verdict).toBe('pass');
    expect(one('trail', { crossSlope: '4%' })?.verdict).toBe('fail');
    expect(one('trail', { crossSlope: '4%' }, { isPaved: false })?.verdict).toBe('pass');
    expect(one('forest-route', { crossSlope: '4%' }, { isPaved: false })?.verdict).toBe('fail');
  });

  test('no more than 30 % of a trail is steeper than 1:12', () => {
    const trail = (flat: string) =>
      checkRoute({
        edition: 'trail',
        segments: [
          { name: 'steep', length: '30 ft', slope: '10%' },
          { name: 'flat', length: flat, slope: '2%' },
        ],
      });
    expect([trail('70 ft').verdict, trail('70 ft').steepShare]).toEqual(['pass', 0.3]);
    expect(trail('69 ft').verdict).toBe('fail');
    expect(trail('69 ft').segments.every(({ verdict }) => verdict === 'pass')).toBe(true);
    expect(trail('70 ft').cautions.map(({ id }) => id)).toEqual(['access']);
  });

  testRefusals(
    checkRoute,
    { edition: 'trail', segments: [{ name: 'a', length: '10 ft', slope: '5%' }] },
    [
      ['edition', 'ramp', 'UNKNOWN_CHOICE'],
      ['segments', [], 'EMPTY_LIST'],
      ['segments.0.slope', '-1%', 'NEGATIVE'],
      ['segments.0.length', '0 ft', 'NOT_POSITIVE'],
      ['segments.0.width', '4 ft', 'UNKNOWN_FIELD'],
    ],
  );
});
