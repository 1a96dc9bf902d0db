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
import { formulaOf } from '../formula-of.js';
import { formulaFaults } from '../formulas/evaluate-step.js';
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
    expect([wide.extrapolated, wide.notes]).toEqual([
      true,
      ['No more than twice the area of the paving should drain onto it, because fines clog it.'],
    ]);
    expect(reservoirDepth({ ...storm, areaRatio: 2 }).extrapolated).toBe(false);
    const deep = { rain: '1 m', infiltration: { depth: '45 mm', time: '1 h' } } as const;
    expect(reservoirDepth(deep)).toMatchObject({
      extrapolated: true,
      notes: [
        'On soil that drains fast, no more than 2 m of stone is advised: its weight closes the soil.',
      ],
    });
    expect(reservoirDepth({ ...deep, rain: '0.8 m' }).extrapolated).toBe(false);
  });

  testRefusals(reservoirDepth, storm, [
    ['voids', 0, 'NOT_POSITIVE'],
    ['voids', 0.8, 'OUT_OF_RANGE'],
    ['infiltration.time', '0 h', 'NOT_POSITIVE'],
    ['rain', undefined, 'REQUIRED'],
    ['fillTime', 2, 'UNIT_MISSING'],
    ['runoff', undefined, 'REQUIRED'],
    ['areaRatio', undefined, 'REQUIRED'],
  ]);

  test('the working of soil that takes it all is the sum that gives 0', () => {
    const fast = reservoirDepth({ ...storm, infiltration: { depth: '100 mm', time: '1 h' } });
    expect(fast.working.map(formulaOf)).toEqual(['d = max(0, (q * R + P - f * t / T) / n)']);
    expect(formulaFaults(fast.working)).toEqual([]);
    expect(formulaFaults(reservoirDepth(storm).working)).toEqual([]);
  });

  test('the working of a drain time works out what was not given', () => {
    const depth = drainTime({ time: '48 h', infiltration: slow });
    expect(depth.working.map(formulaOf)).toEqual(['d = f * (t / T) / n']);
    expect(depth.working[0]?.title).toBe('Depth that drains in the time');
    expect(formulaFaults(depth.working)).toEqual([]);
    const taken = drainTime({ depth: '400 mm', infiltration: slow });
    expect(taken.working.map(formulaOf)).toEqual(['t = T * (d * n / f)']);
    expect(formulaFaults(taken.working)).toEqual([]);
  });

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

  test('shares of a surface are published figures, beside shares that were given', () => {
    const brick = { area: '100 m2', surface: 'brick' } as const;
    const own = { area: '50 m2', coefficient: '0.5' } as const;
    const gravel = { area: '10 m2', surface: 'gravel' } as const;
    const stepOf = (areas: readonly (typeof brick | typeof own | typeof gravel)[]) => {
      const storm = peakRunoff({ areas, rain });
      expect(formulaFaults(storm.working)).toEqual([]);
      const [step] = storm.working;
      const sources = step?.given.map(({ symbol, source }) => `${symbol} ${source}`);
      return [formulaOf(step), sources?.slice(0, -2).join(', ')];
    };
    expect(stepOf([brick])).toEqual(['Q = sum(C[i] * A[i]) * p / t', 'C runoff-table, A null']);
    expect(stepOf([own])).toEqual(['Q = sum(C[i] * A[i]) * p / t', 'C null, A null']);
    expect(stepOf([brick, own, gravel])).toEqual([
      'Q = (sum(C1[i] * A1[i]) + sum(C2[i] * A2[i]) + sum(C3[i] * A3[i])) * p / t',
      'C1 runoff-table, A1 null, C2 null, A2 null, C3 rational-method, A3 null',
    ]);
  });

  test('an inlet, and the height of the far end', () => {
    const inlet = { capacity: '1.1 l/s', rain, coefficient: 1 } as const;
    expect(inletArea(inlet).area.to('m2').toString()).toBe('110');
    expect(inletArea(inlet).rise).toBeNull();
    const rise = inletArea({ ...inlet, run: '8 m', fall: '1.5%' }).rise;
    expect(rise?.to('mm').toString()).toBe('120');
    const dry = { ...inlet, rain: { depth: 0, time: '1 h' } } as const;
    expect(expectFault(() => inletArea(dry), 'OUT_OF_RANGE').message).toContain(
      'the depth of rain is 0. Write the rain of the storm',
    );
  });

  testRefusals(inletArea, { capacity: '1 l/s', rain, coefficient: 1, run: '8 m', fall: '1.5%' }, [
    ['run', undefined, 'REQUIRED'],
    ['fall', undefined, 'REQUIRED'],
  ]);

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

  test('the working of a storm starts with its rain and the shares that run off', () => {
    const storm = stormInDig({
      area: '40 m2',
      rain,
      duration: '30 min',
      drainsIn: [
        { area: '20 m2', surface: 'roof-or-pavement' },
        { area: '10 m2', coefficient: '0.3' },
      ],
    });
    expect(storm.working.map(formulaOf)).toEqual([
      'p = i * (t / T)',
      'a = sum(C1[i] * A1[i]) + sum(C2[i] * A2[i])',
      'V = p * (A + a)',
    ]);
    expect(storm.working[1]?.given.map(({ source }) => source)).toEqual([
      'runoff-code',
      null,
      null,
      null,
    ]);
    expect(formulaFaults(storm.working)).toEqual([]);
    expect(stormInDig({ area: '40 m2', rain, duration: '1 h' }).working).toHaveLength(2);
  });

  testRefusals(stormInDig, { area: '40 m2', rain, duration: '1 h' }, [
    ['rain.depth', '0 mm', 'NOT_POSITIVE'],
    ['rain.time', undefined, 'REQUIRED'],
    ['duration', '10000 h', 'OUT_OF_RANGE'],
    ['duration', undefined, 'REQUIRED'],
    ['area', undefined, 'REQUIRED'],
  ]);

  test('a storm of more rain than any is told by what was written', () => {
    const long = { area: '40 m2', rain, duration: '2000 h' } as const;
    expect(expectFault(() => stormInDig(long), 'OUT_OF_RANGE').message).toContain(
      '36 mm in 1 h for 2000 h is more rain than 50000 mm. Check the rain and the duration',
    );
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
